//! A zip file of a few packed texts, without times, so that the same texts give the same bytes.
//!
//! Field by field as the ZIP file format specification, version 6.3, sections 4.3.7, 4.3.12 and 4.3.16.

use std::io::{self, Write as _};

use flate2::write::DeflateEncoder;
use flate2::{Compression, Crc};

/// A text in the file.
#[derive(Debug, Clone, Copy)]
pub(super) struct Part<'a> {
    /// Its path, with `/`.
    pub(super) name: &'a str,
    /// What it says.
    pub(super) text: &'a str,
}

/// Version of the format that unpacks it: 2.0, deflate.
const VERSION: u16 = 20;
/// Names are UTF-8.
const UTF_8: u16 = 1 << 11;
/// Packed by deflate.
const DEFLATE: u16 = 8;
/// 1 January 1980, the first day the format knows.
const NO_DAY: u16 = 0x21;

/// The file.
///
/// # Errors
/// Where a text cannot be packed or is over 4 GB.
pub(super) fn zip(parts: &[Part<'_>]) -> io::Result<Vec<u8>> {
    let mut file = Vec::new();
    let mut directory = Vec::new();
    for part in parts {
        let offset = size(file.len())?;
        let packed = packed(part.text.as_bytes())?;
        let facts = facts(part, &packed)?;
        file.extend(b"PK\x03\x04");
        file.extend(&facts);
        file.extend(part.name.bytes());
        file.extend(packed);
        directory.extend(b"PK\x01\x02");
        directory.extend(VERSION.to_le_bytes());
        directory.extend(facts);
        // No comment, first disk, no attributes.
        directory.extend([0; 10]);
        directory.extend(offset.to_le_bytes());
        directory.extend(part.name.bytes());
    }
    let start = size(file.len())?;
    let length = size(directory.len())?;
    let count = u16::try_from(parts.len()).map_err(io::Error::other)?;
    file.extend(directory);
    file.extend(b"PK\x05\x06");
    file.extend([0; 4]);
    file.extend(count.to_le_bytes());
    file.extend(count.to_le_bytes());
    file.extend(length.to_le_bytes());
    file.extend(start.to_le_bytes());
    file.extend([0; 2]);
    Ok(file)
}

/// What stands both before a part and in the directory: version, flags, method, time, day, check sum, sizes,
/// lengths of name and extras.
fn facts(part: &Part<'_>, packed: &[u8]) -> io::Result<Vec<u8>> {
    let mut sum = Crc::new();
    sum.update(part.text.as_bytes());
    let mut facts = Vec::new();
    for number in [VERSION, UTF_8, DEFLATE, 0, NO_DAY] {
        facts.extend(number.to_le_bytes());
    }
    for number in [sum.sum(), size(packed.len())?, size(part.text.len())?] {
        facts.extend(number.to_le_bytes());
    }
    let name = u16::try_from(part.name.len()).map_err(io::Error::other)?;
    facts.extend(name.to_le_bytes());
    facts.extend([0; 2]);
    Ok(facts)
}

fn packed(bytes: &[u8]) -> io::Result<Vec<u8>> {
    let mut packer = DeflateEncoder::new(Vec::new(), Compression::fast());
    packer.write_all(bytes)?;
    packer.finish()
}

fn size(length: usize) -> io::Result<u32> {
    u32::try_from(length).map_err(io::Error::other)
}
