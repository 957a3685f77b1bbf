//! A window as a picture: what the toolkit paints, made into pixels by triangles, so that what is seen can be judged.

use std::collections::BTreeMap;

use egui::epaint::{ImageDelta, Primitive, Vertex};
use egui::{ClippedPrimitive, Color32, ColorImage, ImageData, Rect, TextureId};

/// Textures as they were handed over.
#[derive(Default)]
pub struct Textures(BTreeMap<TextureId, ColorImage>);

impl Textures {
    pub fn take(&mut self, id: TextureId, delta: &ImageDelta) {
        let ImageData::Color(image) = &delta.image;
        match delta.pos {
            None => drop(self.0.insert(id, ColorImage::clone(image))),
            Some([left, top]) => {
                let whole = self.0.get_mut(&id).unwrap();
                for y in 0..image.size[1] {
                    for x in 0..image.size[0] {
                        let to = (top + y) * whole.size[0] + left + x;
                        whole.pixels[to] = image.pixels[y * image.size[0] + x];
                    }
                }
            }
        }
    }
}

/// A picture of so many pixels.
pub struct Picture {
    pub width: usize,
    pub height: usize,
    pixels: Vec<[u8; 3]>,
}

impl Picture {
    /// What triangles paint on black, at so many pixels for a point.
    pub fn of(primitives: &[ClippedPrimitive], textures: &Textures, size: egui::Vec2, scale: f32) -> Self {
        let (width, height) = ((size.x * scale) as usize, (size.y * scale) as usize);
        let mut painting = Painting { width, height, pixels: vec![[0.0; 3]; width * height] };
        for primitive in primitives {
            if let Primitive::Mesh(mesh) = &primitive.primitive {
                let texture = textures.0.get(&mesh.texture_id);
                for corners in mesh.indices.chunks(3) {
                    let corners = [0, 1, 2].map(|i| mesh.vertices[corners[i] as usize]);
                    painting.triangle(corners, texture, primitive.clip_rect, scale);
                }
            }
        }
        let round = |c: f32| (c.clamp(0.0, 1.0) * 255.0).round() as u8;
        Self { width, height, pixels: painting.pixels.into_iter().map(|p| p.map(round)).collect() }
    }

    fn color(&self, x: usize, y: usize) -> [u8; 3] {
        self.pixels[y * self.width + x]
    }

    /// The best contrast that stands in a part of the picture against the colour that covers most of it, 1 to 21.
    pub fn contrast_in(&self, part: Rect, scale: f32) -> f32 {
        let range =
            |from: f32, to: f32, most: usize| (from * scale).max(0.0) as usize..((to * scale) as usize).min(most);
        let mut counts: BTreeMap<[u8; 3], usize> = BTreeMap::new();
        for y in range(part.top(), part.bottom(), self.height) {
            for x in range(part.left(), part.right(), self.width) {
                *counts.entry(self.color(x, y)).or_default() += 1;
            }
        }
        let Some((ground, _)) = counts.iter().max_by_key(|(_, n)| **n) else { return 1.0 };
        counts.keys().map(|ink| contrast(*ink, *ground)).fold(1.0, f32::max)
    }

    /// As a portable pixmap, to be looked at.
    pub fn ppm(&self) -> Vec<u8> {
        let mut out = format!("P6 {} {} 255\n", self.width, self.height).into_bytes();
        out.extend(self.pixels.as_flattened());
        out
    }
}

/// A picture that is being painted: red, green and blue, 0 to 1.
struct Painting {
    width: usize,
    height: usize,
    pixels: Vec<[f32; 3]>,
}

impl Painting {
    fn triangle(&mut self, corners: [Vertex; 3], texture: Option<&ColorImage>, clip: Rect, scale: f32) {
        let [a, b, c] = corners.map(|v| v.pos * scale);
        let area = (b - a).x * (c - a).y - (b - a).y * (c - a).x;
        if area == 0.0 {
            return;
        }
        let clip = Rect::from_min_max((clip.min * scale).round(), (clip.max * scale).round());
        let bounds = Rect::from_points(&[a, b, c]).intersect(clip);
        let (left, right) =
            (bounds.left().floor().max(0.0) as usize, (bounds.right().ceil().max(0.0) as usize).min(self.width));
        let (top, bottom) =
            (bounds.top().floor().max(0.0) as usize, (bounds.bottom().ceil().max(0.0) as usize).min(self.height));
        let source = |parts: [f32; 3]| {
            let mix = |of: &dyn Fn(&Vertex) -> f32| parts.iter().zip(&corners).map(|(w, v)| w * of(v)).sum::<f32>();
            let channel = |i: usize| mix(&|v| f32::from(v.color.to_array()[i]) / 255.0);
            let (u, v) = (mix(&|v| v.uv.x), mix(&|v| v.uv.y));
            let shade = texture.map_or([1.0; 4], |t| {
                let at = |f: f32, n: usize| ((f * n as f32) as usize).min(n - 1);
                let texel = t.pixels[at(v, t.size[1]) * t.size[0] + at(u, t.size[0])];
                texel.to_array().map(|c| f32::from(c) / 255.0)
            });
            // Colours are told with their share already in them.
            [0, 1, 2, 3].map(|i| channel(i) * shade[i])
        };
        // Most of what is painted has one colour.
        let is_plain = corners.iter().all(|v| (v.color, v.uv) == (corners[0].color, corners[0].uv));
        let plain = is_plain.then(|| source([1.0, 0.0, 0.0]));
        for y in top..bottom {
            for x in left..right {
                let p = egui::pos2(x as f32 + 0.5, y as f32 + 0.5);
                let edge = |m: egui::Pos2, n: egui::Pos2| ((n - m).x * (p - m).y - (n - m).y * (p - m).x) / area;
                let parts = [edge(b, c), edge(c, a), edge(a, b)];
                if parts.iter().any(|w| *w < 0.0) {
                    continue;
                }
                let source = plain.unwrap_or_else(|| source(parts));
                let under = &mut self.pixels[y * self.width + x];
                for (part, own) in under.iter_mut().zip(source) {
                    *part = own + *part * (1.0 - source[3]);
                }
            }
        }
    }
}

/// Contrast of two colours. Source: WCAG 2.1, "contrast ratio" and "relative luminance".
fn contrast(a: [u8; 3], b: [u8; 3]) -> f32 {
    let light = |c: [u8; 3]| {
        let c = egui::Rgba::from(Color32::from_rgb(c[0], c[1], c[2]));
        0.2126 * c.r() + 0.7152 * c.g() + 0.0722 * c.b()
    };
    let (a, b) = (light(a), light(b));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}
