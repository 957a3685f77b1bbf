//! What is done with a picture that lies underneath: laying it, scaling it by two points, straightening, moving, fading, hiding.

use std::path::{Path, PathBuf};

use egui::Context;
use kurbo::Point;

use super::Window;
use super::ask::{Ask, Purpose};
use super::pictures::{self, Pictures};
use super::state::Room;
use crate::compute::unit_of;
use crate::document::{Draft, Picture};
use crate::session::{Command, Lie, OutlineCommand, length_with_unit};
use crate::texts::{decimal, length, owned, say};

/// What the next clicks on a picture are for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Doing {
    Scale,
    Level,
    Plumb,
    Measure,
    Move,
}

/// A gesture on a picture that is going on.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Laying {
    /// Under what it lies.
    pub under: String,
    pub doing: Doing,
    /// Points of the picture that were clicked.
    pub points: Vec<Point>,
    /// The real distance, as it is typed.
    pub text: String,
    /// Why it was refused.
    pub problem: String,
}

/// A picture that is moved or faded: how it was.
pub(super) struct Taken {
    pub picture: Picture,
    pub from: Point,
}

/// Everything of pictures that is no part of the draft.
#[derive(Default)]
pub(super) struct Underlay {
    pub pictures: Pictures,
    pub laying: Option<Laying>,
    pub taken: Option<Taken>,
    /// What was measured or done last, in words.
    pub told: String,
    /// The folder from which files are named.
    pub folder: PathBuf,
}

impl Underlay {
    /// Where the file of a picture is.
    pub fn path(&self, picture: &Picture) -> PathBuf {
        self.folder.join(&picture.file)
    }

    /// How a picture lies, if it could be read.
    pub fn lie(&self, picture: &Picture) -> Option<Lie> {
        self.pictures.get(&self.path(picture)).ok().map(|p| Lie::of(picture, p.size))
    }
}

/// What a person wishes of a picture.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum LayWish {
    /// Begin with this, or give it up.
    Do(String, Option<Doing>),
    /// A point of the frame was clicked.
    Click(Point),
    /// The real distance is typed.
    Distance(String),
    /// It is right.
    SetScale,
    /// The picture was taken at this point of the frame.
    From(String, Point),
    /// It is moved to there.
    To(Point),
    /// It steps back by so much.
    Fade(String, u32),
    /// It is hidden or shown.
    Hide(String, bool),
    /// It is taken out.
    Remove(String),
}

/// The picture under a piece or drawing, or on the table.
pub(super) fn picture_of<'a>(draft: &'a Draft, under: &str) -> Option<&'a Picture> {
    draft.pictures.iter().find(|p| p.under == under)
}

/// Under what a picture lies, in words.
pub(super) fn under_words(under: &str) -> String {
    if under.is_empty() { say!("picture-on-table") } else { say!("picture-under", piece = under) }
}

/// What is said where a picture gets its scale.
pub(super) fn not_flat() -> String {
    say!("picture-not-flat")
}

/// How far a new picture steps back, in hundredths.
const FADED: u32 = 40;

impl Window {
    /// The dialog in which a picture is chosen.
    pub(super) fn ask_for_picture(&mut self) {
        let under = self.shown.frame().unwrap_or_default().to_owned();
        let note = say!("picture-ask-note", where = under_words(&under));
        let choices = [say!("picture-ask-do"), say!("browse")];
        let ask = Ask::new(Purpose::Picture(under), say!("picture-ask-title"), note, &choices);
        self.shown.ask = Some(ask.field(say!("file-label"), say!("picture-path-hint"), ""));
    }

    /// Lays a picture under a piece or drawing.
    pub(super) fn lay(&mut self, under: &str, path: &Path) {
        let problem = if path.as_os_str().is_empty() {
            Some(say!("picture-needs-file"))
        } else if let Some(own) = picture_of(self.open.work().draft(), under) {
            Some(say!("picture-there", where = under_words(under), file = own.file))
        } else {
            let at = path.display().to_string();
            pictures::check(path).err().map(|problem| say!("picture-not-laid", path = at, problem))
        };
        if let Some(problem) = problem {
            if let Some(ask) = &mut self.shown.ask {
                ask.problem = problem;
            }
            return;
        }
        let file = path.strip_prefix(&self.shown.under.folder).unwrap_or(path);
        let parts: Vec<String> = file.iter().map(|p| p.to_string_lossy().into_owned()).collect();
        let file = if file.is_absolute() { file.display().to_string() } else { parts.join("/") };
        let picture = Picture { under: under.to_owned(), file, fade: FADED, ..Picture::default() };
        self.shown.ask = None;
        self.shown.room = Room::Table;
        self.run(&Command::Outline(Box::new(OutlineCommand::Picture(picture))));
        self.tell(say!("picture-lies", where = under_words(under)));
    }

    /// Reads the pictures of the draft; what cannot be read is told.
    pub(super) fn follow_pictures(&mut self, ctx: &Context) {
        let folder = self.open.path().and_then(Path::parent).unwrap_or(Path::new("")).to_owned();
        let under = &mut self.shown.under;
        under.folder = folder;
        let draft = self.open.work().draft();
        let wanted: Vec<PathBuf> = draft.pictures.iter().filter(|p| !p.hidden).map(|p| under.path(p)).collect();
        under.pictures.keep(&wanted);
        let before = wanted.iter().filter(|p| under.pictures.get(p).is_ok()).count();
        for path in &wanted {
            under.pictures.want(ctx, path, self.wake.is_none());
        }
        let gone = under.pictures.hear(ctx);
        if wanted.iter().filter(|p| under.pictures.get(p).is_ok()).count() != before {
            ctx.request_repaint();
        }
        if let Some((path, problem)) = gone.first() {
            self.refuse(say!("picture-not-shown", path = path.display().to_string(), problem));
        }
    }

    fn put_picture(&mut self, picture: Picture) -> bool {
        match self.open.run(&Command::Outline(Box::new(OutlineCommand::Picture(picture)))) {
            Ok(_) => true,
            Err(problem) => {
                self.refuse(problem.to_string());
                false
            }
        }
    }

    /// The picture of a gesture, and how it lies.
    fn laid(&self, under: &str) -> Option<(Picture, Lie)> {
        let picture = picture_of(self.open.work().draft(), under)?.clone();
        let lie = self.shown.under.lie(&picture)?;
        Some((picture, lie))
    }

    /// Gives up a gesture on a picture; says whether there was one.
    pub(super) fn give_up_laying(&mut self) -> bool {
        let taken = self.shown.under.taken.take().is_some();
        if taken {
            self.open.abort();
        }
        self.shown.under.laying.take().is_some() || taken
    }

    /// A gesture on a picture ends.
    pub(super) fn let_go_of_picture(&mut self) {
        if self.shown.under.taken.take().is_some() {
            self.open.finish();
        }
    }

    /// Does what is wished of a picture.
    pub(super) fn picture_wish(&mut self, wish: LayWish) {
        self.finish_typing();
        match wish {
            LayWish::Do(under, doing) => {
                self.give_up_laying();
                self.shown.under.told.clear();
                // The sheet must not slip under a hand that points at it.
                self.shown.view = Some(super::canvas::view_of(&self.scene, &self.shown, self.shown.sheet));
                self.shown.under.laying = doing.map(|doing| Laying {
                    under,
                    doing,
                    points: Vec::new(),
                    text: String::new(),
                    problem: String::new(),
                });
            }
            LayWish::Click(at) => self.clicked_on_picture(at),
            LayWish::Distance(text) => {
                if let Some(laying) = &mut self.shown.under.laying {
                    laying.text = text;
                }
            }
            LayWish::SetScale => self.set_scale(),
            LayWish::From(under, from) => {
                if let Some(picture) = picture_of(self.open.work().draft(), &under).cloned() {
                    self.open.begin(say!("step-change-picture", where = under_words(&under)));
                    self.shown.under.taken = Some(Taken { picture, from });
                }
            }
            LayWish::To(to) => {
                let Some(taken) = &self.shown.under.taken else { return };
                let Some(lie) = self.shown.under.lie(&taken.picture) else { return };
                let mut picture = taken.picture.clone();
                lie.moved(to - taken.from).write(&mut picture, unit_of(self.open.work().draft()));
                self.put_picture(picture);
            }
            LayWish::Fade(under, fade) => {
                if let Some(picture) = picture_of(self.open.work().draft(), &under).cloned() {
                    self.put_picture(Picture { fade: fade.min(100), ..picture });
                }
            }
            LayWish::Hide(under, hidden) => {
                if let Some(picture) = picture_of(self.open.work().draft(), &under).cloned() {
                    self.shown.under.laying = None;
                    self.put_picture(Picture { hidden, ..picture });
                }
            }
            LayWish::Remove(under) => {
                self.shown.under.laying = None;
                self.run(&Command::Outline(Box::new(OutlineCommand::NoPicture(under))));
            }
        }
    }

    fn clicked_on_picture(&mut self, at: Point) {
        let Some(laying) = self.shown.under.laying.clone() else { return };
        let Some((picture, lie)) = self.laid(&laying.under) else { return };
        let mut points = laying.points.clone();
        if points.len() >= 2 {
            points.clear();
        }
        points.push(lie.under(at));
        let unit = unit_of(self.open.work().draft());
        let display = self.open.work().draft().display;
        if let [a, b] = points[..] {
            match laying.doing {
                Doing::Measure => {
                    let length = owned(|| length(lie.distance(a, b), display));
                    self.shown.under.told = match lie.is_scaled {
                        true => say!("picture-distance", length),
                        false => say!("picture-distance-unsure", length),
                    };
                    self.shown.under.laying = None;
                    return;
                }
                Doing::Level | Doing::Plumb => match lie.straightened([a, b], laying.doing == Doing::Plumb) {
                    Ok(lie) => {
                        let mut picture = picture;
                        lie.write(&mut picture, unit);
                        if self.put_picture(picture) {
                            self.shown.under.told = say!("picture-straight");
                            self.shown.under.laying = None;
                        }
                        return;
                    }
                    Err(problem) => {
                        self.shown.under.laying = Some(Laying { points: Vec::new(), problem, ..laying });
                        return;
                    }
                },
                Doing::Scale | Doing::Move => {}
            }
        }
        self.shown.under.laying = Some(Laying { points, problem: String::new(), ..laying });
    }

    fn set_scale(&mut self) {
        let Some(laying) = self.shown.under.laying.clone() else { return };
        let Some((mut picture, lie)) = self.laid(&laying.under) else { return };
        let [a, b] = laying.points[..] else { return };
        let unit = unit_of(self.open.work().draft());
        let scaled = length_with_unit(&laying.text).and_then(|real| lie.scaled([a, b], real));
        match scaled {
            Ok(lie) => {
                lie.write(&mut picture, unit);
                if self.put_picture(picture) {
                    self.shown.message = None;
                    let millimetres = owned(|| decimal(&format!("{:.4}", lie.scale)));
                    self.shown.under.told = say!("picture-scaled", millimetres, caution = not_flat());
                    self.shown.under.laying = None;
                }
            }
            Err(problem) => self.shown.under.laying = Some(Laying { problem, ..laying }),
        }
    }
}
