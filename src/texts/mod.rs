//! The words for readers, in the language in which a pattern is published: catalogues in the open format Fluent
//! (`assets/texts`), and how numbers, lengths and dates are written.
//!
//! The current language is one of the thread. It is set around what makes something for readers ([`speaking`]) and carried on to
//! threads that are begun there ([`carried`]); everywhere else it is English. So what is said to the designer (findings, errors,
//! notes beside a file) stays as it is while a German booklet is made. Formulas, drafts and files for other programs hold no words of here,
//! and their numbers keep the point.

mod catalogue;
mod numbers;

use std::cell::Cell;

pub use crate::base::Language;
pub use numbers::{date, decimal, gathered, inch, length, readable, runs, spreadsheet, typed};

thread_local! {
    static CURRENT: Cell<Language> = const { Cell::new(Language::English) };
}

/// The language of this thread.
pub fn current() -> Language {
    CURRENT.get()
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
    let language = current();
    move || speaking(language, work)
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

/// A text of the catalogue in the current language.
///
/// What it lacks is a fault of the program that tests find; whoever publishes gets the English words all the same.
pub fn said(id: &str, values: &[(&str, Told<'_>)]) -> String {
    let mut languages = [current(), Language::English].into_iter();
    let found = languages.find_map(|language| catalogue::text(language, id, values));
    debug_assert!(found.is_some(), "no text {id} with {values:?}");
    found.unwrap_or_else(|| id.to_owned())
}

/// The text of an id in the current language: `t!("sizes", sizes = list)`, or `t!("sizes", sizes)` where the variable has that name.
macro_rules! t {
    (@of $name:ident = $value:expr) => { $crate::texts::Tell::told(&$value) };
    (@of $name:ident) => { $crate::texts::Tell::told(&$name) };
    ($id:literal $(, $name:ident $(= $value:expr)?)* $(,)?) => {
        $crate::texts::said($id, &[$((stringify!($name), $crate::texts::t!(@of $name $(= $value)?))),*])
    };
}
pub(crate) use t;

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
