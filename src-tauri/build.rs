//! Builds the shell's context, and names the one command that the window may call.
//!
//! A command that is named here needs a permission in `capabilities/`, so a command added later is closed
//! to the window until somebody opens it on purpose.

fn main() {
    let manifest = tauri_build::AppManifest::new().commands(&["ask"]);
    tauri_build::try_build(tauri_build::Attributes::new().app_manifest(manifest))
        .expect("the configuration beside this file is complete, and `npm run build` has made ui/dist");
}
