//! Words that plan and tables share.

use crate::solve::Along;

/// Which way a support runs.
pub const fn runs(along: Along) -> &'static str {
    match along {
        Along::U => "along the face",
        Along::V => "front to back",
        Along::Z => "upright",
    }
}
