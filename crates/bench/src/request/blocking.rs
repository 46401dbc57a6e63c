//! Work that takes a while, off the threads that listen.

use crate::trouble::Trouble;

/// Working out a garment and waiting for a disk belong off the threads that listen. A panic in there ends
/// the one request, not the bench.
pub(crate) async fn blocking<T: Send + 'static>(
    work: impl FnOnce() -> Result<T, Trouble> + Send + 'static,
) -> Result<T, Trouble> {
    tokio::task::spawn_blocking(work)
        .await
        .unwrap_or_else(|_| Err(Trouble::inside()))
}
