//! The built screens, read into memory when the server starts.
//!
//! Only what was found then is ever given out, by its exact path: no request can reach another file of the
//! machine, whatever dots it holds.

use std::collections::BTreeMap;
use std::path::Path;

use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};

/// The files of the built screens by their path, with a leading slash.
#[derive(Debug, Clone, Default)]
pub struct Pages {
    files: BTreeMap<String, Vec<u8>>,
}

impl Pages {
    /// Reads a folder and all below it.
    ///
    /// # Errors
    /// When the folder can't be read or holds no `index.html`.
    pub fn read(folder: &Path) -> std::io::Result<Self> {
        let mut pages = Self::default();
        pages.read_below(folder, "")?;
        if pages.files.contains_key("/index.html") {
            Ok(pages)
        } else {
            Err(std::io::Error::new(std::io::ErrorKind::NotFound, "there is no index.html in it"))
        }
    }

    #[expect(clippy::disallowed_methods, reason = "the built screens are read once, when the server starts")]
    fn read_below(&mut self, folder: &Path, prefix: &str) -> std::io::Result<()> {
        for entry in std::fs::read_dir(folder)? {
            let entry = entry?;
            let path = format!("{prefix}/{}", entry.file_name().to_string_lossy());
            if entry.file_type()?.is_dir() {
                self.read_below(&entry.path(), &path)?;
            } else {
                self.files.insert(path, std::fs::read(entry.path())?);
            }
        }
        Ok(())
    }

    /// The file at a path; the first page at the root.
    pub(crate) fn page(&self, path: &str) -> Response {
        let path = if path == "/" { "/index.html" } else { path };
        match self.files.get(path) {
            Some(bytes) => ([(header::CONTENT_TYPE, media_type(path))], bytes.clone()).into_response(),
            None => (StatusCode::NOT_FOUND, "there is no such page").into_response(),
        }
    }
}

/// Media types by ending, as registered with IANA.
fn media_type(path: &str) -> &'static str {
    match path.rsplit_once('.').map(|(_, ending)| ending) {
        Some("html") => "text/html; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        Some("ico") => "image/vnd.microsoft.icon",
        Some("woff2") => "font/woff2",
        Some("json" | "map") => "application/json",
        Some("txt" | "ftl") => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    #[expect(clippy::disallowed_methods, reason = "the test makes the folder that is read")]
    fn only_what_was_read_is_given_out() {
        let folder = tempfile::tempdir().unwrap();
        std::fs::create_dir(folder.path().join("assets")).unwrap();
        assert!(Pages::read(folder.path()).is_err(), "a folder without a first page");
        std::fs::write(folder.path().join("index.html"), "first").unwrap();
        std::fs::write(folder.path().join("assets/a.js"), "script").unwrap();
        let pages = Pages::read(folder.path()).unwrap();
        for (path, status, kind) in [
            ("/", StatusCode::OK, Some("text/html; charset=utf-8")),
            ("/assets/a.js", StatusCode::OK, Some("text/javascript; charset=utf-8")),
            ("/assets", StatusCode::NOT_FOUND, None),
            ("/assets/../index.html", StatusCode::NOT_FOUND, None),
            ("/../../etc/passwd", StatusCode::NOT_FOUND, None),
        ] {
            let response = pages.page(path);
            assert_eq!(response.status(), status, "{path}");
            if let Some(kind) = kind {
                assert_eq!(response.headers()[header::CONTENT_TYPE], kind, "{path}");
            }
        }
    }
}
