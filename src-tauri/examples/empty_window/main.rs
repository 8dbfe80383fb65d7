//! An empty window built the same way as the app: what the bench holds the app's start against.

fn main() -> tauri::Result<()> {
    tauri::Builder::default().run(tauri::generate_context!("examples/empty_window/tauri.conf.json"))
}
