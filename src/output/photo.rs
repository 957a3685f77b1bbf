//! Pictures of points (photographs, drawings from elsewhere) for the booklet: read from the bytes of a file, turned upright, no larger
//! than print needs, and without what a camera writes into its files (where and when it was taken is nobody's business).
//!
//! The only place outside the window that knows how such files are read.

use std::io::Cursor;

use image::codecs::jpeg::JpegEncoder;
use image::imageops::FilterType;
use image::{DynamicImage, ImageDecoder, ImageFormat, ImageReader, Limits, RgbImage};
use thiserror::Error;

use crate::base::digest;
use crate::texts::say;

/// The most bytes of a file (64 MiB).
pub const MOST_BYTES: usize = 64 * 1024 * 1024;
/// The longest side that is read, points.
const MOST_SIDE: u32 = 20_000;
/// The most memory that reading may take (512 MiB).
const MOST_MEMORY: u64 = 512 * 1024 * 1024;
/// The longest side that is published, points: 174 mm at 230 points an inch.
const PUBLISHED_SIDE: u32 = 1_600;
/// Of a JPEG file that is written, of 100.
const QUALITY: u8 = 85;

/// A picture that can be published.
#[derive(Clone, PartialEq, Eq)]
pub struct Photo {
    /// Points across.
    pub width: u32,
    /// Points down.
    pub height: u32,
    /// A JPEG or PNG file, as browsers read it.
    pub bytes: Vec<u8>,
    /// Whether it is a JPEG file.
    pub is_jpeg: bool,
    /// Its points where it is none: red, green, blue, row by row.
    pub points: Vec<u8>,
    /// Of its bytes.
    pub digest: u128,
}

impl std::fmt::Debug for Photo {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "Photo {} x {}, {} bytes", self.width, self.height, self.bytes.len())
    }
}

/// Why a picture cannot be published.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum PhotoError {
    /// Too many bytes.
    #[error("{}", say!("output-photo-large", bytes, most = MOST_BYTES))]
    TooLarge {
        /// How many.
        bytes: usize,
    },
    /// Not a picture that can be read.
    #[error("{}", say!("output-photo-unread", problem))]
    Unreadable {
        /// What the reader said.
        problem: String,
    },
}

impl Photo {
    /// Reads the bytes of a PNG or JPEG file. Same bytes, same picture.
    ///
    /// # Errors
    /// See [`PhotoError`].
    pub fn read(bytes: &[u8]) -> Result<Self, PhotoError> {
        if bytes.len() > MOST_BYTES {
            return Err(PhotoError::TooLarge { bytes: bytes.len() });
        }
        let unreadable = |problem: String| PhotoError::Unreadable { problem };
        let mut reader = ImageReader::new(Cursor::new(bytes));
        reader = reader.with_guessed_format().map_err(|e| unreadable(e.to_string()))?;
        let is_jpeg = match reader.format() {
            Some(ImageFormat::Jpeg) => true,
            Some(ImageFormat::Png) => false,
            _ => return Err(unreadable(say!("output-photo-other"))),
        };
        let mut limits = Limits::default();
        limits.max_image_width = Some(MOST_SIDE);
        limits.max_image_height = Some(MOST_SIDE);
        limits.max_alloc = Some(MOST_MEMORY);
        reader.limits(limits);
        let mut decoder = reader.into_decoder().map_err(|e| unreadable(e.to_string()))?;
        let way = decoder.orientation().map_err(|e| unreadable(e.to_string()))?;
        let mut image = DynamicImage::from_decoder(decoder).map_err(|e| unreadable(e.to_string()))?;
        image.apply_orientation(way);
        if image.width().max(image.height()) > PUBLISHED_SIDE {
            image = image.resize(PUBLISHED_SIDE, PUBLISHED_SIDE, FilterType::Triangle);
        }
        let points = on_white(&image);
        let (width, height) = points.dimensions();
        let mut out = Vec::new();
        let written = if is_jpeg {
            points.write_with_encoder(JpegEncoder::new_with_quality(&mut out, QUALITY))
        } else {
            points.write_to(&mut Cursor::new(&mut out), ImageFormat::Png)
        };
        written.map_err(|e| unreadable(e.to_string()))?;
        let digest = digest(&[&out]);
        let points = if is_jpeg { Vec::new() } else { points.into_raw() };
        Ok(Self { width, height, bytes: out, is_jpeg, points, digest })
    }

    /// The file within a page, as an address.
    pub fn data_address(&self) -> String {
        let kind = if self.is_jpeg { "jpeg" } else { "png" };
        format!("data:image/{kind};base64,{}", base64(&self.bytes))
    }
}

/// What can be seen through is seen on white: paper.
fn on_white(image: &DynamicImage) -> RgbImage {
    let all = image.to_rgba8();
    RgbImage::from_fn(all.width(), all.height(), |x, y| {
        let [r, g, b, a] = all.get_pixel(x, y).0;
        let mix = |part: u8| {
            let (part, a) = (u32::from(part), u32::from(a));
            ((part * a + 255 * (255 - a) + 127) / 255) as u8
        };
        image::Rgb([mix(r), mix(g), mix(b)])
    })
}

/// RFC 4648, section 4.
fn base64(bytes: &[u8]) -> String {
    const SIGNS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut out = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for three in bytes.chunks(3) {
        let part = |i: usize| u32::from(three.get(i).copied().unwrap_or(0));
        let all = part(0) << 16 | part(1) << 8 | part(2);
        for i in 0..4 {
            if i > three.len() {
                out.push('=');
            } else {
                out.push(char::from(SIGNS[(all >> (18 - 6 * i) & 63) as usize]));
            }
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::base64;

    /// The examples of RFC 4648, section 10.
    #[test]
    fn base64_as_its_standard_has_it() {
        let told = [
            ("", ""),
            ("f", "Zg=="),
            ("fo", "Zm8="),
            ("foo", "Zm9v"),
            ("foob", "Zm9vYg=="),
            ("fooba", "Zm9vYmE="),
            ("foobar", "Zm9vYmFy"),
        ];
        for (from, to) in told {
            assert_eq!(base64(from.as_bytes()), to);
        }
    }
}
