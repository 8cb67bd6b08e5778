//! Drawings and solids as files, read back by other programs' eyes.
//!
//! Tests that need poppler, or Python with `ezdxf` and `trimesh`, are ignored by default; `FLANGEWRIGHT_PYTHON` names
//! the Python to use. `FLANGEWRIGHT_WRITE_GOLDEN=1` writes the golden sheets anew.

mod bench;
mod dxf;
mod endings;
mod golden;
mod mesh;
mod pdf;
mod plan;
mod svg;
mod template;
