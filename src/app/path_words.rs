//! Paths as words: any path there is, on one line of text, and back again unchanged.

use std::fmt::Write as _;
use std::path::{Path, PathBuf};

/// The path on one line: bytes that are no printable text, and `%`, as `%` and two hexadecimal digits.
#[must_use]
pub fn path_words(path: &Path) -> String {
    let mut words = String::new();
    for chunk in path.as_os_str().as_encoded_bytes().utf8_chunks() {
        for letter in chunk.valid().chars() {
            if letter == '%' || letter.is_control() || letter == '\u{2028}' || letter == '\u{2029}'
            {
                let mut bytes = [0; 4];
                for byte in letter.encode_utf8(&mut bytes).bytes() {
                    push_byte(&mut words, byte);
                }
            } else {
                words.push(letter);
            }
        }
        for byte in chunk.invalid() {
            push_byte(&mut words, *byte);
        }
    }
    words
}

/// The path to be read by a person, on one line; not to be read back.
#[must_use]
pub fn path_shown(path: &Path) -> String {
    path.display().to_string().replace(char::is_control, "?")
}

fn push_byte(words: &mut String, byte: u8) {
    // Writing into a string does not fail.
    let _always_well = write!(words, "%{byte:02X}");
}

/// The path that [`path_words`] made these words of. What follows a `%` and is no such byte is taken as it stands.
#[must_use]
pub fn path_of(words: &str) -> PathBuf {
    let mut bytes = Vec::with_capacity(words.len());
    let mut rest = words.as_bytes();
    while let Some((&first, after)) = rest.split_first() {
        let coded = after
            .get(..2)
            .filter(|_| first == b'%')
            .and_then(|digits| std::str::from_utf8(digits).ok())
            .and_then(|digits| u8::from_str_radix(digits, 16).ok());
        if let Some(byte) = coded {
            bytes.push(byte);
            rest = after.get(2..).unwrap_or_default();
        } else {
            bytes.push(first);
            rest = after;
        }
    }
    path_from(bytes)
}

#[cfg(unix)]
fn path_from(bytes: Vec<u8>) -> PathBuf {
    use std::os::unix::ffi::OsStringExt as _;
    PathBuf::from(std::ffi::OsString::from_vec(bytes))
}

#[cfg(not(unix))]
fn path_from(bytes: Vec<u8>) -> PathBuf {
    PathBuf::from(String::from_utf8_lossy(&bytes).into_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_path_comes_back_as_it_was() {
        for text in [
            "/home/a b/Blende für 58.ron",
            "/tmp/100% sure/%41.ron",
            "/tmp/line\nbreak\ttab.ron",
            "/tmp/🔭/环.ron",
            "",
            "C:\\rings\\one.ron",
        ] {
            let words = path_words(Path::new(text));
            assert!(!words.contains('\n') && !words.contains('\t'), "{words}");
            assert_eq!(path_of(&words), Path::new(text), "{words}");
        }
    }

    #[cfg(unix)]
    #[test]
    fn bytes_that_are_no_text_come_back_too() {
        use std::os::unix::ffi::OsStrExt as _;
        let raw = std::ffi::OsStr::from_bytes(b"/tmp/\xff\xfe\xc3/r\n%.ron");
        let words = path_words(Path::new(raw));
        assert_eq!(words, "/tmp/%FF%FE%C3/r%0A%25.ron");
        assert_eq!(path_of(&words).as_os_str(), raw);
    }
}
