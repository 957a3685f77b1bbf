//! Pictures from files, read beside the window and kept while the draft shows them.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, TryRecvError, channel};
use std::thread;

use egui::{ColorImage, Context, Id, TextureHandle, TextureOptions};
use image::{DynamicImage, ImageDecoder, ImageFormat, ImageReader, Limits};

use crate::output::Photo;
use crate::texts::{carried, say};

/// The most bytes of a file (64 MiB).
const MOST_BYTES: u64 = 64 * 1024 * 1024;
/// The longest side, points.
const MOST_SIDE: u32 = 20_000;
/// The most memory that reading may take (512 MiB).
const MOST_MEMORY: u64 = 512 * 1024 * 1024;
/// A picture is shown with no more points a side than this; its scale speaks of those of the file.
const SHOWN_SIDE: u32 = 4_096;

/// A picture that was read.
struct Read {
    image: ColorImage,
    /// Points of the file, across and down.
    size: [u32; 2],
}

/// A picture that can be painted.
pub(super) struct Painted {
    pub texture: TextureHandle,
    /// Points of the file, across and down.
    pub size: [u32; 2],
}

enum Known {
    Coming(Receiver<Result<Read, String>>),
    Here(Painted),
    Gone(String),
}

/// The pictures of a draft.
#[derive(Default)]
pub(super) struct Pictures {
    known: BTreeMap<PathBuf, Known>,
}

impl Pictures {
    /// Begins to read a file that is not known yet. `here`: at once, in the same thread.
    pub fn want(&mut self, ctx: &Context, path: &Path, here: bool) {
        if self.known.contains_key(path) {
            return;
        }
        let (sender, news) = channel();
        let most = ctx.input(|i| i.max_texture_side).min(SHOWN_SIDE as usize) as u32;
        let (own, woken) = (path.to_owned(), ctx.clone());
        let work = move || {
            // The window may be closed by now.
            let _ = sender.send(read(&own, most));
            woken.request_repaint();
        };
        if here {
            work();
        } else {
            // Where the system gives no thread, the news end at once and that is told.
            let _ = thread::Builder::new().name("picture".to_owned()).spawn(carried(work));
        }
        self.known.insert(path.to_owned(), Known::Coming(news));
    }

    /// Takes in what was read; what cannot be read is told once.
    pub fn hear(&mut self, ctx: &Context) -> Vec<(PathBuf, String)> {
        let mut told = Vec::new();
        for (path, known) in &mut self.known {
            let Known::Coming(news) = known else { continue };
            let read = match news.try_recv() {
                Ok(read) => read,
                Err(TryRecvError::Empty) => continue,
                Err(TryRecvError::Disconnected) => Err(say!("picture-cut-short")),
            };
            *known = match read {
                Ok(read) => {
                    let texture = ctx.load_texture(path.display().to_string(), read.image, TextureOptions::LINEAR);
                    Known::Here(Painted { texture, size: read.size })
                }
                Err(problem) => {
                    told.push((path.clone(), problem.clone()));
                    Known::Gone(problem)
                }
            };
        }
        told
    }

    /// The picture, if it is there; else why not, if that is known.
    pub fn get(&self, path: &Path) -> Result<&Painted, Option<&str>> {
        match self.known.get(path) {
            Some(Known::Here(painted)) => Ok(painted),
            Some(Known::Gone(problem)) => Err(Some(problem)),
            Some(Known::Coming(_)) | None => Err(None),
        }
    }

    /// Reads anew what could not be read, so that it is told in the language that is spoken now.
    pub fn tell_again(&mut self) {
        self.known.retain(|_, known| !matches!(known, Known::Gone(_)));
    }

    /// Keeps only these; others are read anew when they are wanted again.
    pub fn keep(&mut self, wanted: &[PathBuf]) {
        self.known.retain(|path, _| wanted.contains(path));
    }
}

/// A picture of the booklet, to be painted; put up once and kept by what is in it. None where it cannot be read, which is told
/// where it is published.
pub(super) fn of_photo(ctx: &Context, photo: &Photo) -> Option<TextureHandle> {
    let id = Id::unique(("photo", photo.digest));
    if let Some(known) = ctx.data(|d| d.get_temp::<TextureHandle>(id)) {
        return Some(known);
    }
    // Already made small and upright.
    let points = image::load_from_memory(&photo.bytes).ok()?.to_rgba8();
    let size = [points.width() as usize, points.height() as usize];
    let image = ColorImage::from_rgba_unmultiplied(size, points.as_raw());
    let texture = ctx.load_texture(format!("photo {:x}", photo.digest), image, TextureOptions::LINEAR);
    ctx.data_mut(|d| d.insert_temp(id, texture.clone()));
    Some(texture)
}

/// Looks whether a file can be a picture, without reading all of it.
///
/// # Errors
/// Why not, and what to do.
pub(super) fn check(path: &Path) -> Result<(), String> {
    decoder(path).map(|_| ())
}

fn decoder(path: &Path) -> Result<impl ImageDecoder + use<>, String> {
    let about = std::fs::metadata(path).map_err(|e| e.to_string())?;
    if !about.is_file() {
        return Err(say!("picture-no-file"));
    }
    if about.len() > MOST_BYTES {
        return Err(say!("picture-too-heavy", count = MOST_BYTES >> 20));
    }
    // By what stands in it, not by its name.
    let file = std::fs::File::open(path).map_err(|e| e.to_string())?;
    let reader = ImageReader::new(std::io::BufReader::new(file));
    let mut reader = reader.with_guessed_format().map_err(|e| e.to_string())?;
    if !matches!(reader.format(), Some(ImageFormat::Png | ImageFormat::Jpeg)) {
        return Err(say!("picture-other-kind"));
    }
    let mut limits = Limits::default();
    (limits.max_image_width, limits.max_image_height) = (Some(MOST_SIDE), Some(MOST_SIDE));
    limits.max_alloc = Some(MOST_MEMORY);
    reader.limits(limits);
    reader.into_decoder().map_err(damaged)
}

fn damaged(problem: image::ImageError) -> String {
    say!("picture-damaged", problem = problem.to_string())
}

fn read(path: &Path, most: u32) -> Result<Read, String> {
    let mut decoder = decoder(path)?;
    let (w, h) = decoder.dimensions();
    if decoder.total_bytes() > MOST_MEMORY {
        return Err(say!("picture-too-many-points", width = w, height = h));
    }
    // A camera writes which way up it was held.
    let way_up = decoder.orientation().map_err(damaged)?;
    let mut image = DynamicImage::from_decoder(decoder).map_err(damaged)?;
    image.apply_orientation(way_up);
    let size = [image.width(), image.height()];
    if size[0].max(size[1]) > most {
        image = image.thumbnail(most, most);
    }
    let points = image.to_rgba8();
    let shown = [points.width() as usize, points.height() as usize];
    Ok(Read { image: ColorImage::from_rgba_unmultiplied(shown, points.as_raw()), size })
}
