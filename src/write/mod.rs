//! From finished pages to files' contents. The writers never hear of a kitchen, and don't know each other.

pub mod csv;
pub mod dxf;
pub mod html;
pub mod numbers;
pub mod pdf;
pub mod png;
pub mod svg;
pub mod xlsx;
