//! Cases that are asked for by address: `VIEW//SIZE`.

use super::cases::CaseError;
use super::model::Model;
use crate::language::nearest;

/// What stands between the view and the size in an address.
pub const VIEW_SIGN: &str = "//";

/// A case: its view, by its place among [`Model::of_views`], and its place among the cases there.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct InView {
    /// The view; 0 in a draft without views.
    pub view: usize,
    /// The size or person.
    pub case: usize,
}

impl Model {
    /// The cases of these addresses, by view and size: `VIEW//SIZE` is one, `VIEW//` every size of the range in that view, a plain size that
    /// size in every view; or in the `views`, where any are named. Without addresses every size of the range, persons where there is none.
    ///
    /// # Errors
    /// A view, size or person that there is not, or that could be several.
    pub fn asked(&self, addresses: &[String], views: &[String]) -> Result<Vec<InView>, CaseError> {
        let named = views.iter().map(|v| self.view_named(v)).collect::<Result<Vec<usize>, _>>()?;
        let chosen = if named.is_empty() { (0..self.of_views().len()).collect() } else { named };
        let all = |views: &[usize]| {
            let cases = &self.plan.cases;
            let many = if cases.range > 0 { cases.range } else { cases.list.len() };
            views.iter().flat_map(|&view| (0..many).map(move |case| InView { view, case })).collect::<Vec<_>>()
        };
        let mut out = if addresses.is_empty() { all(&chosen) } else { Vec::new() };
        for address in addresses {
            match address.split_once(VIEW_SIGN) {
                Some((view, "")) => out.extend(all(&[self.view_named(view)?])),
                Some((view, size)) => {
                    out.push(InView { view: self.view_named(view)?, case: self.plan.cases.find(size)? });
                }
                None => {
                    let case = self.plan.cases.find(address)?;
                    out.extend(chosen.iter().map(|&view| InView { view, case }));
                }
            }
        }
        out.sort_unstable();
        out.dedup();
        Ok(out)
    }

    /// The view of this name, by its place.
    ///
    /// # Errors
    /// There is none, with those that there are.
    pub fn view_named(&self, name: &str) -> Result<usize, CaseError> {
        let name = name.trim();
        let found = self.views.iter().position(|v| v.view() == name);
        found.ok_or_else(|| {
            let known: Vec<String> = self.views.iter().map(|v| v.view().to_owned()).collect();
            let hint = nearest(name, known.iter().map(String::as_str)).map(str::to_owned);
            CaseError::UnknownView { asked: name.chars().take(60).collect(), hint, known }
        })
    }

    /// The address of a case in this view: `VIEW//SIZE`, or the size alone where the draft has no views.
    pub fn address(&self, case: usize) -> String {
        let size = self.plan.cases.list.get(case).map_or("", |c| c.address.as_str());
        match &self.plan.view {
            Some(view) => format!("{view}{VIEW_SIGN}{size}"),
            None => size.to_owned(),
        }
    }
}
