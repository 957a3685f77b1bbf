//! All words that a person reads: catalogues in the open format Fluent (`assets/texts`, a folder for each language), and how numbers,
//! lengths and dates are written.
//!
//! Two persons read, perhaps in two languages: whoever buys the pattern, in the draft's language (`t!`, [`current`]), and whoever is at
//! the program, in their own (`say!`, [`own`]): the window, findings, refusals, help. So a finding stays in the designer's language
//! while a booklet is made in another. Formulas, drafts and files for other programs hold no words of here, and their numbers keep the point.
//!
//! Both are of the thread. The first is set around what makes something for readers ([`speaking`]), the second by the window and the
//! command line at their beginning ([`set_own`]); both are carried on to threads that are begun there ([`carried`]). Where nothing sets them
//! they are English.

mod catalogue;
mod numbers;
mod wording;

use std::cell::Cell;

pub use crate::base::Language;
pub use numbers::{date, decimal, gathered, inch, length, own_length, own_number, readable, runs, spreadsheet, typed};
pub use wording::{advice, means, message, plain_amount, severity, template};

thread_local! {
    static CURRENT: Cell<Language> = const { Cell::new(Language::English) };
    static OWN: Cell<Language> = const { Cell::new(Language::English) };
}

/// The language of this thread for whoever reads what is published.
pub fn current() -> Language {
    CURRENT.get()
}

/// The language of this thread for whoever is at the program.
pub fn own() -> Language {
    OWN.get()
}

/// From now on this thread speaks this language to whoever is at the program.
pub fn set_own(language: Language) {
    OWN.set(language);
}

/// Runs `what` so that numbers, lengths and lists are written for whoever is at the program.
pub fn owned<T>(what: impl FnOnce() -> T) -> T {
    speaking(own(), what)
}

/// Runs `what` so that also what is told to whoever is at the program is worded for readers: where it stands in what is published.
pub fn outward<T>(what: impl FnOnce() -> T) -> T {
    struct Back(Language);
    impl Drop for Back {
        fn drop(&mut self) {
            OWN.set(self.0);
        }
    }
    let _back = Back(OWN.replace(current()));
    what()
}

/// Runs `what` in a language; the one before is the current one again afterwards, also where `what` panics.
pub fn speaking<T>(language: Language, what: impl FnOnce() -> T) -> T {
    struct Back(Language);
    impl Drop for Back {
        fn drop(&mut self) {
            CURRENT.set(self.0);
        }
    }
    let _back = Back(CURRENT.replace(language));
    what()
}

/// Work for another thread, which speaks there as this thread does now.
pub fn carried<T>(work: impl FnOnce() -> T) -> impl FnOnce() -> T {
    let (language, persons) = (current(), own());
    move || {
        set_own(persons);
        speaking(language, work)
    }
}

/// What is put into a text.
#[derive(Clone, Copy, Debug)]
pub enum Told<'a> {
    /// Words as they are: names, numbers that are written already.
    Words(&'a str),
    /// A count, by which a text can choose its form.
    Count(u64),
}

/// Something that can be put into a text.
pub trait Tell {
    /// As it is told.
    fn told(&self) -> Told<'_>;
}

impl Tell for str {
    fn told(&self) -> Told<'_> {
        Told::Words(self)
    }
}

impl Tell for String {
    fn told(&self) -> Told<'_> {
        Told::Words(self)
    }
}

impl<T: Tell + ?Sized> Tell for &T {
    fn told(&self) -> Told<'_> {
        (**self).told()
    }
}

macro_rules! counts {
    ($($kind:ty),*) => {
        $(impl Tell for $kind {
            fn told(&self) -> Told<'_> {
                Told::Count(u64::try_from(*self).unwrap_or(u64::MAX))
            }
        })*
    };
}

counts!(usize, u32, u64);

/// A text of the catalogue in a language.
///
/// What it lacks is a fault of the program that tests find; the person gets the English words all the same.
pub fn said(language: Language, id: &str, values: &[(&str, Told<'_>)]) -> String {
    let mut languages = [language, Language::English].into_iter();
    let found = languages.find_map(|language| catalogue::text(language, id, values));
    debug_assert!(found.is_some(), "no text {id} with {values:?}");
    found.unwrap_or_else(|| id.to_owned())
}

/// The text of an id for whoever reads what is published: `t!("sizes", sizes = list)`, or `t!("sizes", sizes)` where the variable has that name.
macro_rules! t {
    (@of $name:ident = $value:expr) => { $crate::texts::Tell::told(&$value) };
    (@of $name:ident) => { $crate::texts::Tell::told(&$name) };
    ($id:literal $(, $name:ident $(= $value:expr)?)* $(,)?) => {
        $crate::texts::said($crate::texts::current(), $id, &[$((stringify!($name), $crate::texts::t!(@of $name $(= $value)?))),*])
    };
}
pub(crate) use t;

/// The text of an id for whoever is at the program, as [`t!`].
macro_rules! say {
    ($id:literal $(, $name:ident $(= $value:expr)?)* $(,)?) => {
        $crate::texts::said($crate::texts::own(), $id, &[$((stringify!($name), $crate::texts::t!(@of $name $(= $value)?))),*])
    };
}
pub(crate) use say;

/// The id of a text that is said later, by [`said`], for tables of what is constant; tests find it as they find those of [`say!`].
macro_rules! id {
    ($id:literal) => {
        $id
    };
}
pub(crate) use id;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_language_is_of_its_thread_and_of_its_work() {
        assert_eq!(current(), Language::English);
        let inside = speaking(Language::German, || {
            let bare = std::thread::spawn(current).join().expect("a thread that does nothing else");
            let carried = std::thread::spawn(carried(current)).join().expect("a thread that does nothing else");
            (bare, carried, speaking(Language::English, current), current())
        });
        let (en, de) = (Language::English, Language::German);
        assert_eq!((inside, current()), ((en, de, en, de), en));
        // The person at the program has a language of their own, which publishing in another one leaves alone.
        let person = std::thread::spawn(|| {
            set_own(Language::German);
            let inside = speaking(Language::English, || (own(), current(), owned(current), outward(own), own()));
            (inside, std::thread::spawn(carried(own)).join().ok())
        });
        assert_eq!(person.join().ok(), Some(((de, en, de, en, de), Some(de))));
        assert_eq!(own(), en);
        let _ = std::panic::catch_unwind(|| speaking(Language::German, || std::panic::resume_unwind(Box::new(()))));
        assert_eq!(current(), en);
    }

    #[test]
    fn forms_are_chosen_by_count_and_values_are_put_in_as_they_are() {
        let told = |language, n: usize| speaking(language, || t!("pages", count = n));
        assert_eq!([1, 2].map(|n| told(Language::English, n)), ["1 page", "2 pages"]);
        assert_eq!([1, 2].map(|n| told(Language::German, n)), ["1 Seite", "2 Seiten"]);
        // A name of the designer's is no text: nothing in it is read, no mark is put around it.
        let size = "{ $x } „3“";
        assert_eq!(speaking(Language::German, || t!("of-size", size)), "Größe { $x } „3“");
    }
}
