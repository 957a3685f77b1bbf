"""Values that are found: which equations bind which values, and the solution of each system in a case."""
import sys

import numpy as np
from scipy.optimize import brentq, least_squares, minimize

from . import formula
from .curves import EQUAL, NoValue
from .formula import FormulaError, normal
from .meaning import ANGLE, LENGTH, NUMBER, Compiler, scalar

DEGREE = np.pi / 180
BAD = 1e4  # mm; the residual of a trial that cannot be computed


class Equation:
    """Something that must be zero, in mm. `named`: the found values that may give way, None for all it depends on."""

    def __init__(self, build, named, title):
        self.build, self.named, self.title = build, named, title


def equations_of(model):
    out = []
    for name, seam in model.seams.items():
        named = {v for v in map(normal, seam["found_by"]) if v in model.found}
        if not named:
            continue
        stretches = seam["stretches"]
        if not stretches:
            out.append(Equation(whole_seam(name, seam["fit"]), named, f"seam {name}"))
        for i in range(len(stretches)):
            out.append(Equation(stretch(name, stretches, i), named, f"seam {name}, stretch {i + 1}"))
    for condition in model.draft["conditions"]:
        try:
            tree = formula.parse_condition(condition["must"])
        except FormulaError:
            continue  # it says nothing that could be made true
        if tree[0] != "=":
            continue
        named = {v for v in map(normal, condition["found_by"]) if v in model.found} if condition["found_by"] else None
        if named != set():
            out.append(Equation(balance(tree), named, f"condition {condition['name']}"))
    return out


def balance(tree):
    def build(model):
        compiler = Compiler(model, None)
        (ka, a), (kb, b) = compiler.tree(tree[1]), compiler.tree(tree[2])
        if ka is not None and kb is not None and (ka != kb or not scalar(ka)):
            raise FormulaError("an equation of two kinds")
        factor = {NUMBER: 100.0, ANGLE: 1 / DEGREE}.get(ka, 1.0)
        return lambda case: (a(case) - b(case)) * factor, compiler.deps

    return build


def meant(model, fit):
    """(run, deps): run takes the case and the lengths of the two sides and gives what is left over."""
    word, fields = fit.word, fit.fields
    if word == "equal":
        return lambda case, one, two: one - two, set()
    if word == "eased":
        by = model.compile(fields["by"], None, LENGTH)
        sign = 1 if fields["longer"].word == "one" else -1
        return lambda case, one, two: one - two - sign * by.run(case), by.deps
    times = model.compile(fields["times"], None, NUMBER)
    measured_two = fields["longer" if word == "gathered" else "shorter"].word == "two"
    if measured_two:
        return lambda case, one, two: two - times.run(case) * one, times.deps
    return lambda case, one, two: one - times.run(case) * two, times.deps


def whole_seam(name, fit):
    def build(model):
        left, deps = meant(model, fit)
        keys = [("seam", name, side) for side in ("one", "two")]
        return lambda case: left(case, *map(case.get, keys)), deps | set(keys)

    return build


def stretch(name, stretches, index):
    def build(model):
        left, deps = share_of(model, name, stretches[index]) or meant(model, stretches[index]["fit"])
        sides = []
        for side in ("one", "two"):
            ends = [stretches[i]["to_" + side] if i >= 0 else None for i in (index - 1, index)]
            run, more = length_between(model, name, side, ends)
            deps = deps | more
            sides.append(run)
        return lambda case: left(case, sides[0](case), sides[1](case)), deps

    return build


def share_of(model, name, told):
    """A share of the ease of the whole seam, where the stretches tell shares; a stretch without one has none."""
    seam = model.seams[name]
    if not any(s["share"] for s in seam["stretches"]):
        return None
    fit = seam["fit"]
    if fit.word != "eased":
        raise FormulaError("a share of no ease")
    by = model.compile(fit.fields["by"], None, LENGTH)
    share = model.compile(told["share"] or "0", None, NUMBER)
    sign = 1 if fit.fields["longer"].word == "one" else -1
    return (lambda case, one, two: one - two - sign * by.run(case) * share.run(case)), by.deps | share.deps


def length_between(model, name, side, ends):
    """The sewn length of a side of a seam between two points; None: its start; empty: its end."""
    edges = model.run_of(name, side)
    deps = set().union(*[e.deps for e in edges])
    points = [model.compile(end, None) if end else end for end in ends]
    for point in points:
        if point:
            if point.kind is not None and point.kind[0] != "point":
                raise FormulaError("a stretch ends at a point")
            deps |= point.deps

    def place(case, point):
        if point is None:
            return 0.0
        so_far = 0.0
        for meaning in edges:
            edge = meaning.run(case)
            if meaning.kind == LENGTH:
                so_far += edge
                continue
            if point and meaning.kind[1] == point.kind[1]:
                try:
                    return so_far + edge.sewn_of_flat(edge.place_of(point.run(case)))
                except NoValue:
                    pass
            so_far += edge.sewn()
        if point:
            raise NoValue("the end of a stretch does not lie on its side")
        return so_far

    def run(case):
        a, b = (place(case, p) for p in points)
        if b < a - EQUAL:
            raise NoValue("stretches out of order")
        return b - a

    return run, deps


def find_systems(model):
    """The system of each found value."""
    from .draft import parts_of

    naming = {name: [] for name in model.found}
    bound = []
    for i, equation in enumerate(model.equations):
        inputs, _ = model.found_in(("equation", i))
        named = equation.named if equation.named is not None else inputs
        bound.append(named | inputs)
        for name in named:
            naming[name].append(i)
    order = [name for name in model.values if name in model.found]

    def needs(key):
        return [("equation", i) for i in naming[key]] if isinstance(key, str) else sorted(bound[key[1]])

    systems = {}
    for part in parts_of(order, needs):
        names = [name for name in order if name in part]
        if names:
            system = System(model, names, sorted(k[1] for k in part if not isinstance(k, str)))
            systems.update({name: system for name in names})
    every = list(dict.fromkeys(systems.values()))
    for part in parts_of(every, lambda s: s.needs(systems)):
        if len(part) > 1 or part[0] in part[0].own_needs(systems):
            for system in part:
                system.circular = True
    return systems


class System:
    """Values that are found together, and the equations that bind them."""

    def __init__(self, model, names, equations):
        self.model, self.names, self.equations, self.circular = model, names, equations, False
        self.problem = None
        self.limits = {}
        for name in names:
            value = model.values[name]
            try:
                if value["is"]:
                    raise FormulaError("both given and to be found")
                start = model.compile(value["start"], None)
                if not scalar(start.kind) or start.kind is None:
                    raise FormulaError("only numbers, lengths and angles are found")
                ends = [model.compile(value[e], None, start.kind) if value[e] else None for e in ("least", "most")]
                self.limits[name] = (start, *ends)
            except FormulaError as error:
                self.problem = str(error)
        closure = set().union(*[model.found_in(("equation", i))[1] for i in equations])
        self.moving = [k for k in closure if model.found_in(k)[0] & set(names)]

    def inputs(self):
        deps = set().union(*[m.deps for limits in self.limits.values() for m in limits if m])
        return set().union(*[self.model.found_in(k)[0] for k in deps])

    def own_needs(self, systems):
        """The systems that starts and limits need."""
        return {systems[n] for n in self.inputs()}

    def needs(self, systems):
        by_equations = set().union(*[self.model.found_in(("equation", i))[0] for i in self.equations])
        return (self.own_needs(systems) | {systems[n] for n in by_equations}) - {self}

    def solve(self, case):
        if self.circular:
            return NoValue("a start or limit needs the value itself")
        if self.problem:
            return NoValue(self.problem)
        try:
            return Search(self, case).run()
        except NoValue as error:
            return error
        finally:
            case.trial.pop(self, None)
            case.forget(self.moving)


class Search:
    """The search of one system in one case, in steps of each value's scale."""

    def __init__(self, system, case):
        self.system, self.case, self.count = system, case, 0
        starts, leasts, mosts, scales = [], [], [], []
        for name in system.names:
            start, least, most = system.limits[name]
            x = start.run(case)
            scale = {LENGTH: 10.0, ANGLE: 5 * DEGREE, NUMBER: 0.1 * max(abs(x), 1.0)}.get(start.kind, 10.0)
            low = least.run(case) / scale if least else -np.inf
            high = most.run(case) / scale if most else np.inf
            if low > high:
                raise NoValue("the least is above the most")
            starts.append(min(max(x / scale, low), high))
            leasts.append(low)
            mosts.append(high)
            scales.append(scale)
        self.start, self.low, self.high, self.scale = map(np.array, (starts, leasts, mosts, scales))

    def residuals(self, u):
        case, system = self.case, self.system
        case.forget(system.moving)
        self.count += 1
        case.trial[system] = dict(zip(system.names, (float(v) for v in u * self.scale)))
        return np.array([case.get(("equation", i)) for i in system.equations])

    def soft(self, u):
        """Residuals, with a large one where a trial cannot be computed."""
        try:
            return self.residuals(u)
        except NoValue:
            return np.full(len(self.system.equations), BAD)

    def slopes(self, u, step=1e-2):
        """The derivatives by differences of fourth order, or plainer ones at the rim of what can be computed."""
        columns = []
        for i in range(len(u)):
            def at(k):
                v = u.copy()
                v[i] += k * step
                return self.residuals(v)

            try:
                columns.append((8 * (at(1) - at(-1)) - (at(2) - at(-2))) / (12 * step))
            except NoValue:
                try:
                    columns.append((-3 * at(0) + 4 * at(1) - at(2)) / (2 * step))
                except NoValue:
                    columns.append((3 * at(0) - 4 * at(-1) + at(-2)) / (2 * step))
        return np.array(columns).T

    def run(self):
        system = self.system
        u = self.start
        if system.equations:
            self.residuals(u)  # it must be computable where the search starts
            u = self.meet(u)
            if self.is_loose(u):
                u = self.settle(u)
            if self.miss(u) > EQUAL:
                titles = ", ".join(self.system.model.equations[i].title for i in system.equations)
                raise NoValue(f"cannot hold: {titles}")
        return dict(zip(system.names, (float(v) for v in u * self.scale)))

    def miss(self, u):
        return float(np.max(np.abs(self.soft(u))))

    def inside(self, u):
        return np.minimum(np.maximum(u, self.low), self.high)

    def meet(self, u):
        """A place where all equations hold, from the start downhill."""
        if self.miss(u) <= 1e-10:
            return u
        fixed = self.high - self.low <= 0
        if fixed.all():
            return u
        free = ~fixed

        def part(v):
            w = u.copy()
            w[free] = v
            return self.soft(w)

        # The start must lie inside for the search; it may stand on a limit by itself.
        low, high = self.low[free], self.high[free]
        room = np.where(np.isfinite(high - low), high - low, 1.0)
        begin = np.minimum(np.maximum(u[free], low + 1e-9 * room), high - 1e-9 * room)
        found = least_squares(
            part, begin, jac=lambda v: self.loose_slopes(u, free, v), bounds=(low, high), method="trf",
            ftol=1e-15, xtol=1e-15, gtol=1e-15, max_nfev=200,
        )
        out = u.copy()
        out[free] = found.x
        out = self.polish(out)
        if self.miss(out) > EQUAL and len(u) == 1 and len(self.system.equations) == 1:
            out = self.scan(out)
        return out

    def loose_slopes(self, u, free, v):
        w = u.copy()
        w[free] = v
        try:
            return self.slopes(w)[:, free]
        except NoValue:
            return np.zeros((len(self.system.equations), int(free.sum())))

    def polish(self, u):
        """Newton's steps of least length onto the equations."""
        best, miss = u, self.miss(u)
        for _ in range(12):
            if miss <= 1e-11:
                break
            try:
                step = np.linalg.lstsq(self.slopes(best), -self.residuals(best), rcond=1e-9)[0]
            except NoValue:
                break
            after = self.inside(best + step)
            now = self.miss(after)
            if now >= miss:
                break
            best, miss = after, now
        return best

    def scan(self, u):
        """One value, one equation: the root that is nearest to the start, by bracketing."""
        start = float(self.start[0])
        low, high = max(float(self.low[0]), start - 1e3), min(float(self.high[0]), start + 1e3)

        def value(x):
            return float(self.residuals(np.array([x]))[0])

        places = np.unique(np.concatenate([np.linspace(low, high, 401), [start]]))
        known = []
        for x in places:
            try:
                known.append((x, value(x)))
            except NoValue:
                known.append((x, None))
        roots = []
        for (a, fa), (b, fb) in zip(known, known[1:]):
            if fa is not None and fb is not None and (fa == 0 or fa * fb < 0):
                try:
                    roots.append(a if fa == 0 else brentq(value, a, b, xtol=1e-13, rtol=1e-14))
                except NoValue:
                    continue
        roots = [r for r in roots if abs(value(r)) <= EQUAL]
        if not roots:
            return u
        title = self.system.model.equations[self.system.equations[0]].title
        print(f"note: {self.case.address}: {title}: found by a scan, not from the start", file=sys.stderr)
        return np.array([min(roots, key=lambda r: abs(r - start))])

    def is_loose(self, u):
        """Whether the equations leave room to come nearer to the start."""
        if self.miss(u) > EQUAL or np.max(np.abs(u - self.start)) < 1e-12:
            return False
        slopes = self.slopes(u)
        sizes = np.linalg.svd(slopes, compute_uv=False)
        rank = int(np.sum(sizes > 1e-9 * max(sizes[0], 1e-300))) if sizes[0] > 0 else 0
        return rank < len(u)

    def settle(self, u):
        """The nearest to the start (in scales) of all that fulfils the equations."""
        start = self.start
        bounds = [(a if np.isfinite(a) else None, b if np.isfinite(b) else None) for a, b in zip(self.low, self.high)]
        found = minimize(
            lambda v: 0.5 * float(np.sum((v - start) ** 2)), u, jac=lambda v: v - start, method="SLSQP", bounds=bounds,
            constraints=[
                {"type": "eq", "fun": self.soft, "jac": lambda v: self.loose_slopes(v, np.ones(len(v), bool), v)}
            ],
            options={"ftol": 1e-15, "maxiter": 300},
        )
        near = self.polish(self.inside(found.x))
        if self.miss(near) > EQUAL:
            near = u
        return self.sharpen(near)

    def sharpen(self, u):
        """Newton on the conditions of the nearest place (with multipliers), limits kept by an active set."""
        n, m = len(u), len(self.system.equations)
        held = (u <= self.low + 1e-7) | (u >= self.high - 1e-7)
        u = np.where(u <= self.low + 1e-7, self.low, np.where(u >= self.high - 1e-7, self.high, u))
        for turn in range(60):
            free = ~held
            jac = self.slopes(u)
            pull = u - self.start
            lam = np.linalg.lstsq(jac[:, free].T, -pull[free], rcond=1e-9)[0] if free.any() else np.zeros(m)
            # A limit that holds nothing back is let go.
            push = pull + jac.T @ lam
            wrong = held & (((u <= self.low) & (push < -1e-9)) | ((u >= self.high) & (push > 1e-9)))
            if wrong.any() and turn < 30:
                worst = int(np.argmax(np.where(wrong, np.abs(push), 0)))
                held[worst] = False
                continue
            k = int(free.sum())
            bend = np.eye(k) + self.curvature(u, lam, free)
            matrix = np.block([[bend, jac[:, free].T], [jac[:, free], np.zeros((m, m))]])
            right = -np.concatenate([push[free], self.residuals(u)])
            step = np.linalg.lstsq(matrix, right, rcond=1e-12)[0][:k]
            after = u.copy()
            after[free] += step
            over = free & ((after < self.low) | (after > self.high))
            after = self.inside(after)
            held |= over
            size = float(np.max(np.abs(after - u))) if k else 0.0
            u = after
            if size < 1e-9 and not over.any():
                break
        return self.polish(u)

    def curvature(self, u, lam, free):
        """The second derivatives of the equations, weighted with their multipliers, by differences of the slopes."""
        step, rows = 1e-2, []
        places = np.flatnonzero(free)
        for i in places:
            up, down = u.copy(), u.copy()
            up[i] += step
            down[i] -= step
            try:
                rows.append((lam @ (self.slopes(up) - self.slopes(down)) / (2 * step))[places])
            except NoValue:
                rows.append(np.zeros(len(places)))
        h = np.array(rows).reshape(len(places), len(places))
        return (h + h.T) / 2
