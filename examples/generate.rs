//! Drafts made by seed, for tests, benches and comparisons: the same seed gives the same draft.
//!
//! `cargo run --release --no-default-features --example generate -- --pieces 3 --points 12 --sizes 5 --found 4 --seed 1`

use std::sync::Arc;

use tracewheel::document::{
    Axis, Cell, Condition, Dart, Draft, Edge, Fit, Person, Piece, Placement, Point, Row, Seam, Segment, Side, Tuck,
    Turn, Value, View,
};
use tracewheel::file;

/// What is asked for.
#[derive(Clone, Copy, Debug)]
pub struct Options {
    /// How many pieces.
    pub pieces: usize,
    /// How many points on each outline.
    pub points: usize,
    /// How many sizes.
    pub sizes: usize,
    /// How many found values.
    pub found: usize,
    /// Share of formulas that are broken.
    pub broken: f64,
    /// How many views: the first has all pieces.
    pub views: usize,
    /// The seed.
    pub seed: u64,
}

impl Default for Options {
    fn default() -> Self {
        Self { pieces: 3, points: 12, sizes: 5, found: 4, broken: 0.0, views: 0, seed: 1 }
    }
}

/// Numbers by seed: splitmix64.
struct Dice(u64);

impl Dice {
    fn roll(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }
    fn below(&mut self, n: usize) -> usize {
        (self.roll() % n.max(1) as u64) as usize
    }
    /// Between `a` and `b`, to a tenth.
    fn tenths(&mut self, a: f64, b: f64) -> f64 {
        let steps = ((b - a) * 10.0).round() as usize;
        ((a * 10.0).round() + self.below(steps + 1) as f64) / 10.0
    }
    /// A length of so many millimetres, in any unit.
    fn length(&mut self, mm: f64) -> String {
        match self.below(4) {
            0 => format!("{} mm", (mm * 10.0).round() / 10.0),
            1 => format!("{} {}/16 in", (mm / 25.4).floor(), 1 + self.below(15)).replace("0 ", ""),
            _ => format!("{} cm", (mm * 10.0).round() / 100.0),
        }
    }
}

/// Makes a draft.
pub fn draft(options: &Options) -> Draft {
    let mut make = Make {
        dice: Dice(options.seed.wrapping_mul(0x1234_5678_9ABC_DEF1) ^ 0x55),
        options: *options,
        draft: Draft::default(),
    };
    make.draft.format = "tracewheel draft".into();
    make.draft.title = format!("Made by seed {}", options.seed);
    make.chart();
    for p in 0..options.pieces {
        let piece = make.piece(p);
        make.draft.pieces.push(Arc::new(piece));
    }
    make.seams();
    make.find();
    make.views();
    make.draft
}

struct Make {
    dice: Dice,
    options: Options,
    draft: Draft,
}

impl Make {
    /// The formula, or now and then a broken one.
    fn maybe(&mut self, formula: String) -> String {
        let share = (self.options.broken * 1000.0) as usize;
        if self.dice.below(1000) >= share {
            return formula;
        }
        match self.dice.below(5) {
            0 => format!("{formula} + nowhere"),
            1 => "3 + 2 cm".into(),
            2 => "1 cm / (2 cm - 20 mm)".into(),
            3 => format!("{formula} +"),
            _ => "between((0 cm, 0 cm), (3 cm, 0 cm)).at(9 cm)".into(),
        }
    }

    fn chart(&mut self) {
        let labels: Vec<String> = (0..self.options.sizes).map(|i| format!("{}", 30 + 2 * i)).collect();
        let mut person = Person { name: "somebody".into(), ..Person::default() };
        for r in 0..5 {
            let (start, step) = (self.dice.tenths(300.0, 900.0), self.dice.tenths(10.0, 40.0));
            let mut cells = Vec::new();
            for (i, label) in labels.iter().enumerate() {
                // A gap in one row, to be guessed.
                if r == 3 && i == 1 && labels.len() > 3 {
                    continue;
                }
                let mm = start + step * i as f64;
                cells.push(Cell(label.clone(), self.dice.length(mm)));
            }
            let mm = start + step * 0.7;
            person.cells.push(Cell(format!("r{r}"), self.dice.length(mm)));
            self.draft.chart.rows.push(Row { name: format!("r{r}"), by: vec![Axis::Girth], cells, ..Row::default() });
        }
        let is = self.maybe("chart.r0 / 2 + r1 * 0.25 - 3/8 in".into());
        self.draft.chart.rows.push(Row { name: "r5".into(), is, ..Row::default() });
        self.draft.chart.base = labels[0].clone();
        self.draft.chart.girth = labels;
        self.draft.chart.persons.push(person);
        let near = self.dice.tenths(1.0, 4.0);
        for (name, is) in [
            ("v0", "r0 / 4 + 2 cm".to_owned()),
            ("v1", "v0 * 0.7 + r1 / 10".to_owned()),
            ("v2", format!("max(r2 / 5, v0) + graded(r0, at: [40 cm, 80 cm], give: [1 cm, {near} cm])")),
            ("lean", format!("{} deg + asin(0.1)", self.dice.tenths(3.0, 12.0))),
            ("share", "round(0.1 + 1/3, 0.01) * 100 %".to_owned()),
        ] {
            let is = self.maybe(is);
            self.draft.values.push(Value { name: name.into(), is, ..Value::default() });
        }
    }

    /// A point on the outline, near the circle about `mid`.
    fn around(&mut self, i: usize, before: Option<&str>) -> String {
        let turn = 360.0 * i as f64 / self.options.points as f64;
        let factor = self.dice.tenths(0.8, 1.2);
        let polar = format!("mid.polar({turn:.3} deg, v0 * {factor})");
        let (sin, cos) = (libm::sin(turn.to_radians()) * factor, libm::cos(turn.to_radians()) * factor);
        match (self.dice.below(11), before) {
            (0, _) => format!("mid.right(v0 * {cos:.4}).down(v0 * {sin:.4})"),
            (1, Some(b)) => format!("halfway({polar}, on_way({b}, {polar}, 0.8))"),
            (2, _) => format!("on_way(mid, mid.polar({turn:.3} deg, 2 * v0), {} / 2)", factor),
            (3, _) => format!("mid.polar({:.3} deg, v0 * {factor}).turned(mid, 10 deg)", turn - 10.0),
            (4, _) => format!("foot({polar}, line(mid, mid.polar({:.3} deg + lean, v0)))", turn),
            (5, _) => format!("mid.polar({:.3} deg, v0 * {factor}).mirrored(plumb(mid))", 180.0 - turn),
            (6, _) => format!("cross(level(mid.down(v0 * {sin:.4})), plumb(mid.right(v0 * {cos:.4})))"),
            (7, _) => format!("if(r0 > 50 cm and not r1 < 1 cm, {polar}, mid.polar({turn:.3} deg, v0))"),
            (8, _) => format!("mid.moved(offset(v0 * {cos:.4}, v0 * {sin:.4}) * 1.0)"),
            (9, _) => format!("mid + offset(v0 * {cos:.4}, v0 * {sin:.4})"),
            (10, _) => format!(
                "cross(parallel(level(mid), v0 * {sin:.4}), through(mid.right(v0 * {cos:.4}), square_to: level(mid)))"
            ),
            _ => polar,
        }
    }

    fn segment(&mut self, a: &str, b: &str) -> Segment {
        let bow = self.dice.tenths(0.3, 3.0);
        match self.dice.below(5) {
            0 => Segment::Curve(
                format!("on_way({a}, {b}, 1/3).polar(heading({a}, {b}) - 90 deg, {bow} cm)"),
                format!("{b}.polar(heading({b}, {a}) + lean, 0.3 * gap({a}, {b}))"),
                b.into(),
            ),
            1 => Segment::Arc {
                centre: format!("halfway({a}, {b}).polar(heading({a}, {b}) + 90 deg, gap({a}, {b}) * {bow})"),
                turn: if self.dice.below(4) == 0 { Turn::Anticlockwise } else { Turn::Clockwise },
                to: b.into(),
            },
            2 => {
                let mut through = vec![format!("on_way({a}, {b}, 0.3).polar(heading({a}, {b}) - 90 deg, {bow} mm)")];
                if self.dice.below(2) == 0 {
                    through.push(format!("on_way({a}, {b}, 2/3).polar(heading({a}, {b}) + 90 deg, {bow} mm)"));
                }
                let end = |on: bool, turn: &str| if on { format!("heading({a}, {b}) {turn}") } else { String::new() };
                let (l, r) = (self.dice.below(2) == 0, self.dice.below(2) == 0);
                Segment::Smooth { through, leaving: end(l, "- 20 deg"), arriving: end(r, "+ lean"), to: b.into() }
            }
            _ => Segment::Straight(b.into()),
        }
    }

    fn piece(&mut self, p: usize) -> Piece {
        let mut piece = Piece { name: format!("piece{p}"), ..Piece::default() };
        let point = |name: &str, at: String| Point { name: name.into(), at, note: String::new() };
        piece.points.push(point("mid", "(0 cm, 0 cm)".into()));
        let n = self.options.points.max(3);
        for i in 0..n {
            let before = (i > 0).then(|| format!("p{}", i - 1));
            let at = self.around(i, before.as_deref());
            let at = self.maybe(at);
            piece.points.push(point(&format!("p{i}"), at));
        }
        let mut i = 0;
        while i < n {
            let count = (1 + self.dice.below(2)).min(n - i);
            let name = format!("e{}", piece.edges.len());
            let by = (i..i + count).map(|k| self.segment(&format!("p{k}"), &format!("p{}", (k + 1) % n))).collect();
            piece.edges.push(Edge { name, from: format!("p{i}"), by, ..Edge::default() });
            i += count;
        }
        piece.lines.push(Edge {
            name: "inner".into(),
            from: "p0".into(),
            by: vec![Segment::Straight("mid".into()), Segment::Straight(format!("p{}", n / 2))],
            ..Edge::default()
        });
        let straight = |e: &&Edge| e.by.len() == 1 && matches!(e.by[0], Segment::Straight(_));
        if let Some(edge) = piece.edges.iter().find(straight) {
            let (on, from, to) = (edge.name.clone(), edge.from.clone(), edge.by[0].end().to_owned());
            let intake = self.maybe(format!("gap({from}, {to}) * share / 4"));
            let tip = if self.dice.below(2) == 0 { "3 cm".to_owned() } else { "on_way(mid, p0, 0.2)".to_owned() };
            piece.darts.push(Dart { name: "dart".into(), on, centre: "1/2".into(), intake, tip, ..Dart::default() });
        }
        if let Some(edge) = piece.edges.iter().rev().find(|e| piece.darts.iter().all(|d| d.on != e.name)) {
            piece.pleats.push(Tuck {
                name: "pleat".into(),
                on: edge.name.clone(),
                centre: "0.4".into(),
                intake: "gap(mid, p0) / 40".into(),
                ..Tuck::default()
            });
            // Places on a sewn edge, and parts of it.
            piece.points.push(point("on_edge", format!("{}.at(1/4)", edge.name)));
            piece.points.push(point("off_edge", format!("{}.off(3/4, 1 cm)", edge.name)));
        }
        piece
    }

    fn seams(&mut self) {
        for p in 1..self.options.pieces {
            let (one, two) = (vec!["piece0.e0".to_owned()], vec![format!("reversed(piece{p}.e1)")]);
            let side = if self.dice.below(2) == 0 { Side::One } else { Side::Two };
            let fit = match self.dice.below(4) {
                0 => Fit::Equal,
                1 => Fit::Eased { longer: side, by: "5 mm".into() },
                2 => Fit::Gathered { longer: side, times: "1.5".into(), least: String::new(), most: String::new() },
                _ => Fit::Stretched { shorter: side, times: "0.9".into() },
            };
            let name = format!("s{p}");
            self.draft.seams.push(Arc::new(Seam { name, one, two, fit, ..Seam::default() }));
            self.draft.placements.push(Placement {
                name: format!("laid{p}"),
                lay: format!("piece{p}"),
                on: "piece0".into(),
                point: "mid".into(),
                onto: "p0".into(),
                turned: "lean * 2".into(),
                overlap: "1 cm".into(),
                mirrored: self.dice.below(2) == 0,
                ..Placement::default()
            });
            let piece = Arc::make_mut(&mut self.draft.pieces[0]);
            let at = format!("laid{p}.p1");
            piece.points.push(Point { name: format!("from_laid{p}"), at, note: String::new() });
        }
    }

    fn value(&mut self, name: &str, start: &str, least: &str, most: &str) {
        self.draft.values.push(Value {
            name: name.into(),
            start: start.into(),
            least: least.into(),
            most: most.into(),
            ..Value::default()
        });
    }

    fn must(&mut self, name: &str, must: String, by: &[&str]) {
        let found_by = by.iter().map(|b| (*b).to_owned()).collect();
        self.draft.conditions.push(Condition { name: name.into(), must, found_by, ..Condition::default() });
    }

    /// Found values, a system of one or two at a time.
    fn find(&mut self) {
        let mut left = self.options.found;
        let mut k = 0;
        while left > 0 {
            let p = k % self.options.pieces.max(1);
            let piece = format!("piece{p}");
            let long = self.dice.tenths(12.0, 20.0);
            let (a, b) = (format!("f{k}a"), format!("f{k}b"));
            let kind = if left >= 2 { self.dice.below(6) } else { self.dice.below(3) };
            let add = |make: &mut Self, name: String, at: String| {
                let piece = Arc::make_mut(&mut make.draft.pieces[p]);
                piece.points.push(Point { name, at, note: String::new() });
            };
            let line = |make: &mut Self, name: String, by: Vec<Segment>| {
                let piece = Arc::make_mut(&mut make.draft.pieces[p]);
                piece.lines.push(Edge { name, from: "mid".into(), by, ..Edge::default() });
            };
            match kind {
                0..=2 => {
                    self.value(&a, "v1 / 2", "1 mm", "90 cm");
                    add(self, format!("q{k}"), format!("mid.polar({} deg, {a})", 10 * k));
                    let (h, i) = (
                        format!("mid.polar({} deg, {a} * 0.3)", 10 * k + 25),
                        format!("on_way(q{k}, mid, 0.3).down({a} / 9)"),
                    );
                    line(self, format!("h{k}"), vec![Segment::Curve(h, i, format!("q{k}"))]);
                    let must = format!("length({piece}.h{k}) = {long} cm + r1 / 20");
                    match kind {
                        0 => self.must(&format!("c{k}"), must, &[&a]),
                        1 => {
                            // Twice the same: redundant, but true.
                            self.must(&format!("c{k}"), must.clone(), &[&a]);
                            self.must(
                                &format!("c{k}again"),
                                format!("2 * ({}) = 2 * ({long} cm + r1 / 20)", format_args!("length({piece}.h{k})")),
                                &[&a],
                            );
                        }
                        _ => {
                            let fit = Fit::Eased { longer: Side::One, by: format!("{long} cm - length({piece}.e0)") };
                            let (one, two) = (vec![format!("{piece}.h{k}")], vec![format!("{piece}.e0")]);
                            let found_by = vec![a.clone()];
                            self.draft.seams.push(Arc::new(Seam {
                                name: format!("kept{k}"),
                                one,
                                two,
                                fit,
                                found_by,
                                ..Seam::default()
                            }));
                        }
                    }
                    left -= 1;
                }
                _ => {
                    let most = if kind == 5 { "7 cm" } else { "" };
                    self.value(&a, "6 cm", "", most);
                    self.value(&b, "5 cm", "", "");
                    add(self, format!("q{k}"), format!("mid.right({a}).down({b})"));
                    let must = format!("gap({piece}.mid, {piece}.q{k}) = {long} cm");
                    self.must(&format!("c{k}"), must, &[&a, &b]);
                    if kind == 3 {
                        add(self, format!("n{k}"), "mid.right(10 cm)".into());
                        let must = format!("gap({piece}.n{k}, {piece}.q{k}) = {long} cm - 1 cm + r2 / 100");
                        self.must(&format!("d{k}"), must, &[&a, &b]);
                    }
                    left -= 2;
                }
            }
            k += 1;
        }
    }
}

impl Make {
    /// Views: the first with all pieces, the others now and then without some; each with formulas of its own for a few values.
    fn views(&mut self) {
        let near = |dice: &mut Dice, a: f64, b: f64| dice.tenths(a, b);
        for k in 0..self.options.views {
            let all: Vec<String> = self.draft.pieces.iter().map(|p| p.name.clone()).collect();
            let mut pieces = Vec::new();
            if k > 0 && self.dice.below(3) > 0 {
                pieces = all.into_iter().filter(|_| self.dice.below(3) > 0).collect();
            }
            let mut values = Vec::new();
            for (name, is) in [
                ("v0", format!("r0 / 4 + {} cm", near(&mut self.dice, 1.0, 4.0))),
                ("v1", format!("v0 * 0.6 + r2 / {}", near(&mut self.dice, 8.0, 12.0))),
                ("lean", format!("{} deg", near(&mut self.dice, 3.0, 12.0))),
                ("f0a", format!("{} cm", near(&mut self.dice, 8.0, 14.0))),
            ] {
                if self.dice.below(3) == 0 && self.draft.values.iter().any(|v| v.name == name) {
                    values.push((name.to_owned(), self.maybe(is)));
                }
            }
            self.draft.views.push(View { name: format!("view{k}"), pieces, values, ..View::default() });
        }
    }
}

#[allow(dead_code, reason = "tests and benches take this file as a module")]
fn main() -> std::process::ExitCode {
    let mut options = Options::default();
    let mut arguments = std::env::args().skip(1);
    while let Some(name) = arguments.next() {
        let value = arguments.next().and_then(|v| v.parse::<f64>().ok());
        let count = value.map(|v| v as usize);
        match (name.as_str(), count) {
            ("--pieces", Some(n)) if n > 0 => options.pieces = n,
            ("--points", Some(n)) if n > 2 => options.points = n,
            ("--sizes", Some(n)) if n > 0 => options.sizes = n,
            ("--found", Some(n)) => options.found = n,
            ("--seed", Some(n)) => options.seed = n as u64,
            ("--views", Some(n)) => options.views = n,
            ("--broken", Some(_)) => options.broken = value.unwrap_or(0.0),
            _ => {
                let usage = "generate [--pieces N] [--points N] [--sizes N] [--found N] [--broken SHARE] [--views N] [--seed S]\n";
                let _ = std::io::Write::write_all(&mut std::io::stderr(), usage.as_bytes());
                return std::process::ExitCode::from(2);
            }
        }
    }
    let text = file::write(&draft(&options));
    let _ = std::io::Write::write_all(&mut std::io::stdout(), text.as_bytes());
    std::process::ExitCode::SUCCESS
}
