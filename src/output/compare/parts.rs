//! What the model and the finished pieces know of each part, and choices that are no texts.

use super::choices::word;
use super::facts::{Got, Make, thing, unit};
use super::views::lacks;
use super::{Thing, Unit};
use crate::base::DisplayUnit;
use crate::compute::{FramePlan, Item, Mouth, NodeId};
use crate::curves::Pt;
use crate::document::{Care, GrainWays, Inner, LayPlan, OWN_LETTER, Part, Wearers, WornAs};
use crate::finish::{ClothBook, FinishedPiece};
use crate::language::Kind;
use crate::output::lay::{kept_lays, yards};
use crate::texts::{self, t};

impl Make<'_> {
    /// Its head and what is kept with it.
    pub fn head(&mut self) {
        let draft = self.side.draft;
        let addresses: Vec<&str> =
            self.cases.iter().map(|c| self.side.model.plan.cases.list[*c].address.as_str()).collect();
        let own = self.facts.part(Part::Draft);
        own.words(t!("fact-display"), "display", word(&draft.display));
        own.words(t!("fact-language"), "language", word(&draft.language));
        own.words(
            t!("fact-audience"),
            "audience",
            match &draft.audience {
                crate::document::Audience::Child { from, to } => t!("children-from", from, to),
                other => word(other),
            },
        );
        own.words(t!("fact-worn"), "care", worn_words(&draft.care));
        own.words(t!("fact-survey"), "survey", word(&draft.chart.survey));
        own.noted(t!("fact-base-size"), "base", draft.chart.base.as_str());
        own.noted(t!("fact-order-of-sizes"), "girth", addresses.join(", "));
        let mut unchecked: Vec<&str> = draft.settings.unchecked.iter().map(|(code, _)| code.as_str()).collect();
        unchecked.sort_unstable();
        own.noted(t!("fact-checks-off"), "unchecked reason", unchecked.join(", "));
        let kept = self.facts.part(Part::Kept);
        let mut silenced: Vec<String> =
            draft.silenced.iter().map(|s| t!("fact-silenced-at", code = s.code, at = s.at)).collect();
        silenced.sort_unstable();
        kept.noted(t!("fact-silenced"), "silenced at", silenced.join(", "));
        let tables: Vec<String> =
            draft.table.iter().map(|t| format!("{} {} ({}, {}) {}", t.sheet, t.piece, t.x, t.y, t.turned)).collect();
        kept.noted(t!("fact-table"), "table piece", tables.join("; "));
        let pictures: Vec<String> = draft
            .pictures
            .iter()
            .map(|p| {
                format!("{} {} ({}, {}) {} {} {} {}", p.under, p.file, p.x, p.y, p.scale, p.turned, p.fade, p.hidden)
            })
            .collect();
        kept.noted(t!("fact-pictures"), "picture under", pictures.join("; "));
        let plans: Vec<String> = draft.plans.iter().map(plan_words).collect();
        kept.noted(t!("fact-plans"), "plan material", plans.join("; "));
        for one in kept_lays(&ClothBook::new(self.side.model, self.side.finished)) {
            let words = match &one.lay {
                Ok(lay) => {
                    let need = lay.need();
                    let [exact, buy] = [need.exact, need.buy].map(|mm| texts::length(mm, DisplayUnit::Cm));
                    t!("fact-plan-need", exact, buy, yards = yards(need.buy_yards))
                }
                Err(_) => t!("fact-plan-untold"),
            };
            let plan = &draft.plans[one.place];
            let kept = self.facts.part(Part::Kept);
            kept.words(t!("fact-plan-cloth", plan = plan.name), "plan need", words);
        }
        let kept = self.facts.part(Part::Kept);
        let log = &draft.log;
        let fittings: Vec<String> = log.fittings.iter().map(|f| format!("{} {} {}", f.date, f.size, f.cloth)).collect();
        kept.noted(t!("fact-fittings"), "fitting note", fittings.join("; "));
        let releases: Vec<String> = log.releases.iter().map(|r| format!("{} {}", r.date, r.edition)).collect();
        kept.noted(t!("fact-releases"), "release", releases.join("; "));
    }

    /// Rows and values.
    pub fn chart(&mut self) {
        let (draft, model) = (self.side.draft, self.side.model);
        for (i, row) in draft.chart.rows.iter().enumerate() {
            let unit = unit(model.plan.nodes.get(i).and_then(|n| n.kind));
            let one = |case: &usize| match model.cases[*case].rows.get(i) {
                Some(Ok(number)) => Got::Is(Thing::Number(*number, unit)),
                _ => Got::Fails,
            };
            let values = self.cases.iter().map(one).collect();
            let own = self.facts.part(Part::Row(row.name.clone()));
            own.sized(t!("fact-number"), "", values);
            own.words(t!("fact-row-kind"), "kind", word(&row.kind));
            own.noted(t!("fact-row-by"), "by", row.by.iter().map(|a| a.word()).collect::<Vec<_>>().join(", "));
        }
        for (i, value) in draft.values.iter().enumerate() {
            let node = draft.chart.rows.len() + i;
            if !model.plan.is_needed(node as NodeId) {
                continue;
            }
            let kind = model.plan.nodes.get(node).and_then(|n| n.kind);
            let values = self.node(node as NodeId, kind, thing);
            let own = self.facts.part(Part::Value(value.name.clone()));
            own.sized(t!("fact-value"), "", values);
            let how = if value.is_found() { t!("fact-found") } else { t!("fact-given") };
            own.words(t!("fact-comes-about"), "start", how);
        }
    }

    /// What a piece or drawing is in all cases.
    pub fn frame(&mut self, at: usize) {
        let plan = &self.side.model.plan;
        let frame = &plan.frames()[at];
        let name = frame.name.to_string();
        let local = |node: NodeId| {
            let full = &*plan.nodes[node as usize].part.name;
            full.strip_prefix(&*frame.name).and_then(|n| n.strip_prefix('.')).unwrap_or(full).to_owned()
        };
        for (nodes, inner) in [(&frame.edges, Inner::Edge), (&frame.lines, Inner::Line)] {
            for node in nodes {
                let length =
                    self.node(*node, None, |item, _| Some(Thing::Number(item.edge()?.sewn_length(), Unit::Length)));
                let lines = self.node(*node, None, |item, _| Some(Thing::Line(item.edge()?.curve.to_path())));
                let own = self.facts.part(Part::Inner(name.clone(), inner, local(*node)));
                own.sized(if inner == Inner::Edge { t!("fact-sewn-length") } else { t!("fact-length") }, "", length);
                own.sized(t!("fact-line"), "", lines);
            }
        }
        // Points of the program's own are in derived pieces only.
        for node in frame.points.iter().filter(|n| !local(**n).contains(OWN_LETTER)) {
            let places = self.node(*node, None, thing);
            self.facts.part(Part::point(&name, &local(*node))).sized(t!("fact-place"), "", places);
        }
        if let Some(piece) = self.side.model.draft.pieces.get(at).filter(|_| frame.is_piece) {
            self.mouths(frame, piece);
            self.piece(at, frame, piece);
        }
    }

    fn mouths(&mut self, frame: &FramePlan, piece: &crate::document::Piece) {
        let darts = piece.darts.iter().map(|d| (Inner::Dart, &d.name));
        let pleats = piece.pleats.iter().map(|t| (Inner::Pleat, &t.name));
        let tucks = piece.tucks.iter().map(|t| (Inner::Tuck, &t.name));
        for ((inner, name), (node, is_dart)) in darts.chain(pleats).chain(tucks).zip(&frame.mouths) {
            let of = |get: &dyn Fn(&Mouth<f64>) -> Option<Thing>| {
                self.node(*node, None, |item, _| match item {
                    Item::Mouth(mouth) => get(mouth),
                    _ => None,
                })
            };
            let place = |p: Pt<f64>| Thing::Place(p.value());
            let mut made = vec![
                (t!("fact-intake"), of(&|m| Some(Thing::Number(m.intake, Unit::Length)))),
                (t!("fact-first-foot"), of(&|m| Some(place(m.first_foot)))),
                (t!("fact-second-foot"), of(&|m| Some(place(m.second_foot)))),
            ];
            if *is_dart {
                made.push((t!("fact-tip"), of(&|m| m.tip.map(place))));
                made.push((t!("fact-leg"), of(&|m| m.leg.map(|l| Thing::Number(l, Unit::Length)))));
                made.push((t!("fact-bow"), of(&|m| Some(Thing::Number(m.bow.unwrap_or(0.0), Unit::Length)))));
            }
            let own = self.facts.part(Part::Inner(piece.name.clone(), inner, name.clone()));
            made.into_iter().for_each(|(what, values)| own.sized(what, "", values));
        }
        for dart in &piece.darts {
            let own = self.facts.part(Part::Inner(piece.name.clone(), Inner::Dart, dart.name.clone()));
            own.words(t!("fact-dart-form"), "form", word(&dart.form));
            own.words(t!("fact-pressed"), "pressed", word(&dart.pressed));
            own.words(t!("fact-dart-kept"), "kept", word(&dart.kept));
        }
        for (inner, tuck) in
            piece.pleats.iter().map(|t| (Inner::Pleat, t)).chain(piece.tucks.iter().map(|t| (Inner::Tuck, t)))
        {
            self.facts.part(Part::Inner(piece.name.clone(), inner, tuck.name.clone())).words(
                t!("fact-pressed"),
                "pressed",
                word(&tuck.pressed),
            );
        }
    }

    fn piece(&mut self, at: usize, frame: &FramePlan, piece: &crate::document::Piece) {
        let side = self.side;
        let made: Vec<Option<&FinishedPiece>> =
            self.cases.iter().map(|c| side.finished.cases.get(*c)?.get(at)?.as_deref()).collect();
        let untrue: Vec<bool> =
            self.cases.iter().map(|c| frame.edges.iter().any(|e| side.model.is_untrue(*c, *e))).collect();
        let of = |get: &dyn Fn(&FinishedPiece) -> Got| -> Vec<Got> {
            let one = |(made, untrue): (&Option<&FinishedPiece>, &bool)| match made {
                Some(made) if !untrue => get(made),
                _ => Got::Fails,
            };
            made.iter().zip(&untrue).map(one).collect()
        };
        let mut sized: Vec<(String, Vec<Got>)> = Vec::new();
        let ways = made.iter().flatten().map(|m| m.cuts.len()).max().unwrap_or(0);
        for k in 0..ways {
            let material = piece.cuts.get(k).map_or("", |c| c.material.as_str());
            let what = if material.is_empty() { t!("fact-cut-line") } else { t!("fact-cut-line-in", material) };
            let values = of(&|made| match made.cuts.get(k).map(|c| &c.outline) {
                Some(Some(outline)) => Got::Is(Thing::Line(outline.clone())),
                Some(None) => Got::Fails,
                None => Got::NotSaid,
            });
            sized.push((what, values));
        }
        let called = |made: &FinishedPiece, n: usize| {
            let mark = &made.notches[n];
            let seam = &side.model.plan.seams[mark.seam].name;
            let name = if mark.name.is_empty() { t!("fact-match-mark") } else { t!("fact-notch", name = &*mark.name) };
            let like =
                made.notches[..n].iter().filter(|m| m.seam == mark.seam && m.name == mark.name && m.edge == mark.edge);
            let edge = frame.edges.get(mark.edge).map_or("", |e| &*side.model.plan.nodes[*e as usize].part.edge);
            let number = like.count();
            let number = if number == 0 { String::new() } else { format!(" ({})", number + 1) };
            format!("{}{number}", t!("fact-mark-of", mark = name, seam = &**seam, edge))
        };
        let mut notches: Vec<String> = Vec::new();
        for made in made.iter().flatten() {
            for name in (0..made.notches.len()).map(|n| called(made, n)) {
                if !notches.contains(&name) {
                    notches.push(name);
                }
            }
        }
        for name in notches {
            let values = of(&|made| {
                let found = (0..made.notches.len()).find(|n| called(made, *n) == name);
                let at = found.and_then(|n| made.notches[n].strokes.first()).map(|s| s[0]);
                at.map_or(Got::NotSaid, |p| Got::Is(Thing::Place(p)))
            });
            sized.push((name, values));
        }
        let own = self.facts.part(Part::Piece(piece.name.clone()));
        sized.into_iter().for_each(|(what, values)| own.sized(what, "allowance", values));
        for cut in &piece.cuts {
            let mut words = vec![
                t!("fact-cut-count", count = cut.count),
                word(&cut.face),
                t!("fact-cut-outline", outline = word(&cut.outline)),
            ];
            words.extend((cut.grain.ways == GrainWays::One).then(|| t!("fact-cut-one-way")));
            words.extend((!cut.allowances.is_empty()).then(|| t!("fact-cut-allowances", set = cut.allowances)));
            own.words(t!("fact-cut-from", material = cut.material), "cut", words.join(", "));
        }
        for a in piece.allowances.iter().filter(|a| a.turns > 0) {
            own.words(t!("fact-turns-at", edge = a.edge), "turns", a.turns.to_string());
        }
        for corner in &piece.corners {
            own.words(t!("fact-corner-at", corner = corner.at), "corner at", word(&corner.form));
        }
        for (k, mark) in piece.marks.iter().enumerate() {
            let numbers = if mark.count < 2 { 0..=0 } else { 1..=mark.count };
            let mut places = Vec::new();
            for number in numbers {
                let what = if number == 0 { t!("fact-place") } else { t!("fact-place-number", number) };
                let values = of(&|made| {
                    let placed = made.marks.iter().find(|m| m.place == k && m.number == number);
                    placed.map_or(Got::Fails, |m| Got::Is(Thing::Place(m.at)))
                });
                places.push((what, values));
            }
            let own = self.facts.part(Part::Inner(piece.name.clone(), Inner::Mark, mark.name.clone()));
            places.into_iter().for_each(|(what, values)| own.sized(what, "", values));
            own.words(t!("fact-mark-kind"), "kind", word(&mark.kind));
            own.words(t!("fact-count"), "count", if mark.count > 1 { mark.count.to_string() } else { String::new() });
        }
        for fold in &piece.folds {
            let turns = if fold.turns > 0 { fold.turns.to_string() } else { String::new() };
            self.facts.part(Part::Inner(piece.name.clone(), Inner::Fold, fold.name.clone())).words(
                t!("fact-turns"),
                "turns",
                turns,
            );
        }
        for (k, line) in frame.finishing.lines.iter().enumerate() {
            let values = of(&|made| {
                let drawn = made.lines.iter().find(|l| l.place == k && l.slit == line.slit);
                drawn.map_or(Got::Fails, |l| Got::Is(Thing::Line(l.path.clone())))
            });
            let inner = if line.slit { Inner::Slit } else { Inner::Lengthen };
            self.facts.part(Part::Inner(piece.name.clone(), inner, line.name.to_string())).sized(
                t!("fact-line"),
                "",
                values,
            );
        }
    }

    /// Placements, seams, conditions.
    pub fn sewn(&mut self) {
        let (draft, plan) = (self.side.draft, &self.side.model.plan);
        for placement in &draft.placements {
            let name = format!("placement {}", placement.name);
            let Some(node) = plan.nodes.iter().position(|n| *n.part.name == *name) else { continue };
            if !plan.is_needed(node as NodeId) {
                continue;
            }
            let rigid = |get: &dyn Fn(&crate::curves::Rigid<f64>) -> Thing| {
                self.node(node as NodeId, None, |item, _| match item {
                    Item::Rigid(motion) => Some(get(motion)),
                    _ => None,
                })
            };
            let place = rigid(&|m| Thing::Place(m.of(Pt::new(0.0, 0.0)).value()));
            let turn = rigid(&|m| Thing::Number(m.of_angle(0.0), Unit::Angle));
            let own = self.facts.part(Part::Placement(placement.name.clone()));
            own.sized(t!("fact-place"), "", place);
            own.sized(t!("fact-turn"), "", turn);
            let over = if placement.mirrored { t!("yes") } else { t!("no") };
            own.words(t!("fact-turned-over"), "mirrored", over);
        }
        for (i, seam) in plan.own_seams() {
            let difference = self.node(seam.sides[2], Some(Kind::LENGTH), thing);
            let mut sized = vec![(t!("fact-difference"), difference)];
            for (k, stretch) in seam.stretches.iter().enumerate().filter(|_| seam.stretches.len() > 1) {
                for (node, side) in stretch.lengths.iter().zip([t!("fact-side-one"), t!("fact-side-two")]) {
                    let what = t!("fact-stretch-of", stretch = k + 1, side);
                    sized.push((what, self.node(*node, Some(Kind::LENGTH), thing)));
                }
            }
            let notches: Vec<&str> = seam.notches.iter().map(|n| &*n.name).collect();
            for (n, name) in notches.iter().enumerate() {
                for (side, called) in [t!("fact-side-one"), t!("fact-side-two")].into_iter().enumerate() {
                    let one = |case: &usize| {
                        let placed = self.side.finished.notches.get(*case)?;
                        let own = placed.iter().filter(|p| p.seam == i && *p.name == **name);
                        match own.clone().nth(notches[..n].iter().filter(|m| *m == name).count())?.sides[side] {
                            Some(Ok(place)) => Some(Got::Is(Thing::Number(place.sewn, Unit::Length))),
                            Some(Err(_)) => None,
                            None => Some(Got::NotSaid),
                        }
                    };
                    let values: Vec<Got> = self.cases.iter().map(|c| one(c).unwrap_or(Got::Fails)).collect();
                    if values.iter().any(|v| !matches!(v, Got::NotSaid)) {
                        sized.push((t!("fact-notch-along", name = *name, side = called), values));
                    }
                }
            }
            let own = self.facts.part(Part::Seam(seam.name.to_string()));
            sized.into_iter().for_each(|(what, values)| own.sized(what, "", values));
        }
        for seam in draft.seams.iter().filter(|s| !lacks(self.side.model, &Part::Seam(s.name.clone()))) {
            let own = self.facts.part(Part::Seam(seam.name.clone()));
            own.words(t!("fact-fit"), "fit", fit_words(&seam.fit));
            for (i, stretch) in seam.stretches.iter().enumerate() {
                own.words(t!("fact-stretch-fit", stretch = i + 1), "stretch fit", fit_words(&stretch.fit));
            }
            own.words(t!("fact-pressed"), "pressed", word(&seam.pressed));
            own.words(t!("fact-order"), "order", seam.order.trim());
            for notch in &seam.notches {
                let words = t!("fact-notch-told", count = notch.strokes, side = word(&notch.on));
                own.words(t!("fact-notch", name = notch.name), "notch", words);
            }
        }
        for condition in &plan.conditions {
            let sides = condition.sides.map(|node| self.node(node, plan.nodes[node as usize].kind, thing));
            let name = condition.name.strip_prefix("condition.").unwrap_or(&condition.name);
            let own = self.facts.part(Part::Condition(name.to_owned()));
            let [left, right] = sides;
            own.sized(t!("fact-left-side"), "", left);
            own.sized(t!("fact-right-side"), "", right);
            own.words(t!("fact-must"), "must", word(&condition.relation));
        }
    }

    /// Measures, materials, strips, notions.
    pub fn bought(&mut self) {
        let draft = self.side.draft;
        for measure in draft.measures.iter().filter(|m| !lacks(self.side.model, &Part::Measure(m.name.clone()))) {
            if let Some(values) = self.named(&format!("measure.{}", measure.name)) {
                self.facts.part(Part::Measure(measure.name.clone())).sized(t!("fact-measure"), "", values);
            }
        }
        for m in &draft.materials {
            let own = self.facts.part(Part::Material(m.name.clone()));
            own.words(t!("fact-kind"), "kind", word(&m.kind));
            own.words(t!("fact-nap"), "nap", word(&m.nap));
            own.words(t!("fact-laid"), "laid", word(&m.laid));
            own.words(t!("fact-shrinks"), "shrinks", word(&m.shrinks));
        }
        for strip in &draft.strips {
            let values = self.named(&format!("strip.{}", strip.name));
            let own = self.facts.part(Part::Strip(strip.name.clone()));
            if let Some(values) = values {
                own.sized(t!("fact-length"), "", values);
            }
            own.words(t!("fact-count"), "count", strip.count.to_string());
            own.words(t!("fact-layers"), "layers", strip.layers.to_string());
            own.words(t!("fact-thread"), "grain", word(&strip.grain));
            own.words(t!("fact-strip-kind"), "kind", word(&strip.kind));
            own.words(t!("fact-strip-place"), "place", word(&strip.place));
            own.words(t!("fact-fastened"), "fastened", word(&strip.fastened));
            own.words(t!("fact-in-lay"), "in_lay", word(&strip.in_lay));
        }
        for notion in &draft.notions {
            self.facts.part(Part::Notion(notion.name.clone())).words(
                t!("fact-count"),
                "count",
                notion.count.to_string(),
            );
        }
    }
}

/// A lay plan in short, with everything that makes it another.
fn plan_words(plan: &LayPlan) -> String {
    let LayPlan { name, view, material, width, laid, folded_part, nap, sizes, places, digest } = plan;
    let sizes: Vec<String> = sizes.iter().map(|s| format!("{} x {}", s.count.max(1), s.size)).collect();
    let locked = places.iter().filter(|p| p.locked).count();
    format!(
        "{name} {view} {material} {width} {} {folded_part} {} {} {locked} locked {digest}",
        word(laid),
        word(nap),
        sizes.join(" + ")
    )
}

fn side(side: &crate::document::Side) -> String {
    match side {
        crate::document::Side::One => t!("side-one"),
        crate::document::Side::Two => t!("side-two"),
    }
}

fn fit_words(fit: &crate::document::Fit) -> String {
    use crate::document::Fit;
    match fit {
        Fit::Equal => t!("fit-equal"),
        Fit::Eased { longer, .. } => t!("fit-eased", side = side(longer)),
        Fit::Gathered { longer, .. } => t!("fit-gathered", side = side(longer)),
        Fit::Stretched { shorter, .. } => t!("fit-stretched", side = side(shorter)),
    }
}

/// How a garment is worn and by whom, in plain words.
fn worn_words(care: &Care) -> String {
    let worn = match care.worn_as {
        WornAs::Unstated => t!("worn-unsaid"),
        WornAs::Outerwear => t!("worn-outerwear"),
        WornAs::Sleepwear => t!("worn-sleepwear"),
        WornAs::TightSleepwear => t!("worn-tight"),
        WornAs::Other => t!("worn-other"),
    };
    match care.wearers {
        Wearers::Anyone => worn,
        Wearers::Boys => format!("{worn}, {}", t!("worn-by-boys")),
        Wearers::Girls => format!("{worn}, {}", t!("worn-by-girls")),
    }
}
