//! Compressed streams of PDF files.
//!
//! Only `pdf` and `pdf_text` use it.

use zlib_rs::{Deflate, DeflateFlush, Status, compress_bound};

use super::pdf::PdfError;

/// How hard it is tried, from 1 to 9. What is written is mostly numbers: 9 makes them 1 % smaller.
const LEVEL: i32 = 6;
/// How far back repetitions are looked for: the farthest that there is, as a power of two.
const WINDOW: u8 = 15;

/// Packs the streams of a file one after the other: its tables are made once.
pub(super) struct Packer(Deflate);

impl Packer {
    pub(super) fn new() -> Self {
        Self(Deflate::new(LEVEL, true, WINDOW))
    }

    /// What `FlateDecode` makes `data` of. The same data give the same bytes, whatever was packed before.
    pub(super) fn packed(&mut self, data: &[u8]) -> Result<Vec<u8>, PdfError> {
        self.0.reset();
        let mut out = vec![0; compress_bound(data.len())];
        match self.0.compress(data, &mut out, DeflateFlush::Finish) {
            Ok(Status::StreamEnd) => {
                out.truncate(usize::try_from(self.0.total_out()).unwrap_or(out.len()));
                Ok(out)
            }
            _ => Err(PdfError::TooMuch { bytes: data.len() }),
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use miniz_oxide::inflate::decompress_to_vec_zlib;

    use super::Packer;

    /// Numbers as pages have them, nothing, and what cannot be made smaller.
    fn streams() -> Vec<Vec<u8>> {
        let numbers: String = (0..9000).map(|i| format!("{}.{:03} l\n", i * 7919 % 1000, i * 104_729 % 1000)).collect();
        let noise = (0..70_000_u32).map(|i| (i.wrapping_mul(i).wrapping_mul(2_654_435_761) >> 24) as u8).collect();
        vec![numbers.into_bytes(), Vec::new(), noise, vec![b'0'; 300_000], b"q".to_vec()]
    }

    #[test]
    fn another_library_reads_what_is_packed() {
        let mut packer = Packer::new();
        for data in streams() {
            let packed = packer.packed(&data).unwrap();
            assert!(packed.len() < data.len() + data.len() / 100 + 20, "{} of {}", packed.len(), data.len());
            assert!(decompress_to_vec_zlib(&packed).unwrap() == data);
        }
    }

    #[test]
    fn what_was_packed_before_changes_nothing() {
        let alone: Vec<_> = streams().iter().map(|data| Packer::new().packed(data).unwrap()).collect();
        let mut packer = Packer::new();
        for _ in 0..2 {
            for (data, alone) in streams().iter().zip(&alone).rev() {
                assert!(packer.packed(data).unwrap() == *alone);
            }
        }
    }
}
