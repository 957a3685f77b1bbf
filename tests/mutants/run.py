#!/usr/bin/env python3
"""Mutants: small faults planted in the sources, all in one build, each of which a test should see.

    python3 tests/mutants/run.py draw         the list, a copy of the tree with all mutants, its build
    python3 tests/mutants/run.py reach        every test once without a mutant: passed, seconds, which places it reaches
    python3 tests/mutants/run.py run [N ...]  the mutants (or those named): killed by which test, or survived
    python3 tests/mutants/run.py again        builds again after tests were written, `reach` for new tests, survivors again
    python3 tests/mutants/run.py table        prints what came out, for `outcome.txt`

All of it happens in `target/mutants`. A test can only see a mutant whose place it reaches, so only those are run, the ones that kill
often for their time first, each in a process of its own. A process that takes far longer than it did without a mutant, or far more
memory, is ended; that counts as killed. Environment: MUTANTS_THREADS (2), MUTANTS_SEED and MUTANTS_COUNT for another draw,
MUTANTS_LIMIT (seconds; slower tests are left out of `reach`) and MUTANTS_BUDGET (seconds for one mutant) for a first look,
MUTANTS_TESTS (`--lib --test it`) for which tests are built. Take `target/mutants` away before sources that have changed are drawn from.
"""

import json
import os
import re
import resource
import signal
import subprocess
import sys
import threading
import time
from pathlib import Path

TOP = Path(__file__).resolve().parents[2]
WORK = TOP / "target" / "mutants"
TREE, BUILD, RESULTS = WORK / "tree", WORK / "build", WORK / "results"
SEED = os.environ.get("MUTANTS_SEED", "20261130")
WHICH = os.environ.get("MUTANTS_TESTS", "--lib --test it").split()
COUNT = os.environ.get("MUTANTS_COUNT", "150")
# Seconds that a test may take without a mutant to be asked at all, and that the tests of one mutant may take before it is put off.
LIMIT, BUDGET = float(os.environ.get("MUTANTS_LIMIT", "900")), float(os.environ.get("MUTANTS_BUDGET", "1e9"))
THREADS = int(os.environ.get("MUTANTS_THREADS", "2"))
# What judges files of the house and the README, not what is computed.
LEFT_OUT = ("house::", "readme::")
# Tests of these modules are asked first for a mutant of the room.
NEAR = {
    "language": ("language::", "functions::", "language", "completing::", "cases::", "seeds::"),
    "compute": ("derived", "views::", "patching::", "chart", "oracle::", "examples::", "seeds::", "compute::", "book_drafts::"),
    "numeric": ("numeric_",),
    "finish": ("finishing", "practice::", "planted::", "labels::", "tables::", "laying::"),
}
MEMORY = 4 << 30


def say(*words):
    print(*words, flush=True)


def load(name, empty):
    path = RESULTS / name
    return json.loads(path.read_text()) if path.exists() else empty


def save(name, value):
    RESULTS.mkdir(parents=True, exist_ok=True)
    new = RESULTS / (name + ".new")
    new.write_text(json.dumps(value, indent=1))
    new.replace(RESULTS / name)


def mutants():
    lines = (TREE / "mutants.tsv").read_text().splitlines()
    names = lines[0].split("\t")
    return [dict(zip(names, line.split("\t"))) for line in lines[1:]]


# ---- the copy and its build


def copy_tree():
    """What the version control knows, and what it would take, without this tool. Files that are the same keep their date."""
    listed = subprocess.run(["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"], cwd=TOP, check=True, capture_output=True)
    # The settings of the folder above hold for the copy too; told twice they would be others.
    names = {n for n in listed.stdout.decode().split("\0") if (TOP / n).is_file() and not n.startswith(("tests/mutants/", ".cargo/"))}
    for name in sorted(names):
        # The tool writes these itself.
        if re.match(r"src/(language|compute|numeric|finish)/.*\.rs$|src/lib\.rs$", name) and (TREE / name).exists():
            continue
        new, old = (TOP / name).read_bytes(), TREE / name
        if name == "Cargo.toml":
            # Lints speak of what a person wrote.
            new = re.sub(rb"(?ms)^\[lints\.\w+\]\n.*?(?=^# One profile|^\[profile|\Z)", b"", new)
        if not old.exists() or old.read_bytes() != new:
            old.parent.mkdir(parents=True, exist_ok=True)
            old.write_bytes(new)
    for old in (TREE / "tests").rglob("*"):
        if old.is_file() and str(old.relative_to(TREE)) not in names and "__pycache__" not in old.parts:
            old.unlink()


def write_mutants():
    tool = ["cargo", "run", "--quiet", "--manifest-path", str(TOP / "tests/mutants/Cargo.toml"), "--target-dir", str(WORK / "tool"), "--"]
    without = WORK / "without.txt"
    without.touch()
    subprocess.run([*tool, str(TOP), str(TREE), "--seed", SEED, "--count", COUNT, "--without", str(without)], check=True)


def build():
    """The binaries of tests, or the errors, each with the places that it names as (file, first byte, end)."""
    command = ["cargo", "test", "--no-default-features", "--no-run", *WHICH, "--message-format=json", "--target-dir", str(BUILD)]
    with (WORK / "build.log").open("w") as log:
        done = subprocess.run(command, cwd=TREE, stdout=subprocess.PIPE, stderr=log, text=True)
    binaries, errors = [], []
    for line in done.stdout.splitlines():
        message = json.loads(line)
        if message.get("executable") and message.get("profile", {}).get("test"):
            binaries.append(message["executable"])
        told = message.get("message", {})
        if message["reason"] == "compiler-message" and told["level"] == "error" and (told["spans"] or told["children"]):
            spans = sorted(told["spans"], key=lambda s: not s["is_primary"])
            spans += [s for child in told["children"] for s in child["spans"]]
            errors.append((told["message"], [(s["file_name"], s["byte_start"], s["byte_end"]) for s in spans]))
    return binaries, errors, done.returncode


def blamed(errors):
    """The mutants within which errors lie: the innermost one around the first place that lies in one, else those within the place."""
    listed, found = mutants(), {}
    for words, spans in errors:
        for file, at, end in spans:
            here = [m for m in listed if m["file"] == file]
            around = [m for m in here if int(m["from"]) <= at < int(m["to"])]
            within = [m for m in here if at <= int(m["from"]) and int(m["to"]) <= end]
            if around or within:
                blame = [min(around, key=lambda m: int(m["to"]) - int(m["from"]))] if around else within
                found.update((one["key"], words) for one in blame)
                break
        else:
            say("an error that lies in no mutant:", words, spans)
    return found


def draw():
    copy_tree()
    dropped = load("dropped.json", {})
    while True:
        write_mutants()
        binaries, errors, status = build()
        if status == 0:
            break
        found = blamed(errors)
        if not found:
            sys.exit("the build fails, and no mutant is to blame: " + "; ".join(e[0] for e in errors))
        dropped.update(found)
        for key, words in found.items():
            say("does not compile:", key, "|", words)
        with (WORK / "without.txt").open("a") as file:
            file.writelines(key + "\n" for key in found)
        save("dropped.json", dropped)
    save("binaries.json", binaries)
    told = ["git", "log", "-1", "--format=%h of %cs", "--", "src"]
    save("commit.json", subprocess.run(told, cwd=TOP, check=True, capture_output=True, text=True).stdout.strip())
    say(len(mutants()), "mutants are in the build;", len(dropped), "did not compile")


# ---- running


def limits():
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
    resource.setrlimit(resource.RLIMIT_FSIZE, (1 << 30, 1 << 30))
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))


def run_test(binary, test, mutant, seconds, seen=None):
    """passed, failed or hung; seconds."""
    environment = dict(os.environ, MUTANT=str(mutant), RUST_BACKTRACE="0", RUST_TEST_THREADS="1")
    environment.setdefault("PROPTEST_RNG_SEED", "20261125")
    environment["PROPTEST_DISABLE_FAILURE_PERSISTENCE"] = "1"
    if seen:
        environment["MUTANTS_SEEN"] = str(seen)
    begun = time.monotonic()
    process = subprocess.Popen([binary, test, "--exact"], cwd=TREE, env=environment, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT, text=True, errors="replace", start_new_session=True, preexec_fn=limits)
    try:
        out, _ = process.communicate(timeout=seconds)
        end = "passed" if process.returncode == 0 and "1 passed" in out else "failed"
    except subprocess.TimeoutExpired:
        out, end = "", "hung"
    finally:
        try:
            # The group that was begun here: what the test has started and left behind.
            os.killpg(process.pid, signal.SIGKILL)
        except ProcessLookupError:
            pass
        process.communicate()
    return end, time.monotonic() - begun, out


def spread(jobs, work):
    """`work` for every job, by so many threads; what it gives is handed on one at a time."""
    jobs, lock = list(jobs), threading.Lock()

    def loop():
        while True:
            with lock:
                if not jobs:
                    return
                job = jobs.pop(0)
            work(job, lock)

    threads = [threading.Thread(target=loop) for _ in range(THREADS)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()


def listed_tests():
    for binary in load("binaries.json", []):
        out = subprocess.run([binary, "--list", "--format", "terse"], cwd=TREE, capture_output=True, text=True, check=True).stdout
        for line in out.splitlines():
            name, kind = line.rsplit(": ", 1)
            if kind == "test" and not name.startswith(LEFT_OUT):
                yield binary, name


def reach(only_new=False):
    known = {n: t for n, t in load("reach.json", {}).items() if only_new and t["end"] == "passed"}
    ignored = set()
    jobs = [(b, n) for b, n in listed_tests() if n not in known]
    say(len(jobs), "tests without a mutant")

    def work(job, lock):
        binary, name = job
        seen = WORK / f"seen-{threading.get_ident()}.txt"
        seen.unlink(missing_ok=True)
        end, seconds, out = run_test(binary, name, "record", LIMIT, seen)
        reached = sorted({int(n) for n in seen.read_text().split()}) if seen.exists() else []
        with lock:
            if end == "failed" and "1 ignored" in out:
                ignored.add(name)
                return
            if end != "passed":
                say("without a mutant:", name, end, round(seconds, 1), out[-600:])
            known[name] = {"end": end, "seconds": round(seconds, 2), "reached": reached}
            if len(known) % 50 == 0:
                save("reach.json", known)
                say(len(known), "tests")

    spread(jobs, work)
    save("reach.json", known)
    reached = {n for t in known.values() if t["end"] == "passed" for n in t["reached"]}
    say(f"{len(known)} tests, {sum(t['seconds'] for t in known.values()):.0f} s, {len(ignored)} ignored;",
        sum(t["end"] != "passed" for t in known.values()), "do not pass;", len(mutants()) - len(reached), "mutants are reached by none")


def run(numbers, fresh=True):
    listed, tests, results = mutants(), load("reach.json", {}), load("results.json", {})
    binaries = dict((n, b) for b, n in listed_tests())
    tally = {}  # test: (asked, killed)
    for one in results.values():
        for name in one["asked"]:
            asked, killed = tally.get(name, (0, 0))
            tally[name] = (asked + 1, killed + (name == one.get("by")))

    def order(room, names):
        def cost(name):
            asked, killed = tally.get(name, (0, 0))
            near = any(name.startswith(part) for part in NEAR[room])
            chance = (killed + (0.5 if near else 0.15)) / (asked + 1)
            return (tests[name]["seconds"] + 0.02) / chance
        return sorted(names, key=cost)

    def work(number, lock):
        mutant = listed[number]
        room = mutant["file"].split("/")[1]
        old = results.get(str(number), {"asked": {}, "end": "survived", "seconds": 0})
        if fresh:
            old = {"asked": {}, "end": "survived", "seconds": 0}
        left = [n for n, t in tests.items() if number in t["reached"] and t["end"] == "passed" and n in binaries and n not in old["asked"]]
        asked, end, by, begun = dict(old["asked"]), "survived", None, time.monotonic()
        while left and end == "survived" and sum(asked.values()) < BUDGET:
            with lock:
                left = order(room, left)
            name = left.pop(0)
            told, seconds, out = run_test(binaries[name], name, number, 30 + 20 * tests[name]["seconds"])
            asked[name] = round(seconds, 2)
            if told != "passed":
                end, by = ("hung" if told == "hung" else "killed"), name
            with lock:
                was, killed = tally.get(name, (0, 0))
                tally[name] = (was + 1, killed + (told != "passed"))
        seconds = round(old["seconds"] + time.monotonic() - begun, 1)
        if end == "survived" and not asked:
            end = "not reached"
        with lock:
            results[str(number)] = {"end": end, "by": by, "seconds": seconds, "asked": asked, "left": len(left)}
            save("results.json", results)
            say(f"{number:4} {end:11} {seconds:7.1f} s  {len(asked):4} tests, {len(left):4} left  {mutant['file']}:{mutant['line']} {mutant['kind']}: "
                f"{mutant['before'][:60]} -> {mutant['after'][:60]} | {by}")

    spread(numbers, work)
    ends = [r["end"] for r in results.values()]
    say({end: ends.count(end) for end in sorted(set(ends))})


def again():
    if not (RESULTS / "old_tests.json").exists():
        save("old_tests.json", sorted(load("reach.json", {})))
    copy_tree()
    binaries, errors, status = build()
    if status != 0:
        sys.exit("the build fails: " + "; ".join(e[0] for e in errors))
    save("binaries.json", binaries)
    reach(only_new=True)
    run([int(n) for n, r in load("results.json", {}).items() if r["end"] in ("survived", "not reached")], fresh=False)


def table():
    """What came out, and by which test; what survives is explained by hand."""
    results, tests = load("results.json", {}), load("reach.json", {})
    old = set(load("old_tests.json", list(tests)))
    explained = dict(line.split("\t") for line in (TOP / "tests/mutants/explained.tsv").read_text().splitlines())
    rows, counts = [], {}
    for number, mutant in enumerate(mutants()):
        one = results[str(number)]
        end = one["end"]
        if end in ("killed", "hung"):
            group = "killed by a test that was there" if one["by"] in old else "killed by a new test"
            words = f"{group}{', which was ended as it hung' if end == 'hung' else ''}: {one['by']}"
        elif mutant["key"] in explained:
            group = "explained"
            words = f"{group}: {explained[mutant['key']]}"
        else:
            group = words = "survived, not explained"
        counts[group] = counts.get(group, 0) + 1
        more = f", {one['left']} more reach it" if group in ("explained", "survived, not explained") and one.get("left") else ""
        change = f"{mutant['before'][:100]} -> {mutant['after'][:100] or '(left out)'}"
        rows.append(f"{number:3} {mutant['file']}:{mutant['line']}, {mutant['kind']}: {change}\n    {words} ({one['seconds']} s, {len(one['asked'])} asked{more})")
    commit = load("commit.json", "an unknown commit")
    dropped = load("dropped.json", {})
    print(f"Sources as of {commit}; seed {SEED}; {len(rows)} mutants drawn that compile, {len(dropped)} drawn before did not:")
    for key, words in sorted(dropped.items()):
        print(f"    {key} | {words}")
    print(f"{len(tests)} tests, {sum(t['seconds'] for t in tests.values()):.0f} s without a mutant, one at a time; not those of {', '.join(LEFT_OUT)}, which judge files.")
    odd = sorted(n for n, t in tests.items() if t["end"] != "passed")
    print(f"Not asked, as they do not pass without a mutant in the copy or take too long: {', '.join(odd) or 'none'}.")
    print("Explained: by reading. Not every test that reaches a survivor was asked: the numbers say how many.")
    for group, count in sorted(counts.items()):
        print(f"{count:4} {group}")
    print("", *rows, sep="\n")


def main():
    WORK.mkdir(parents=True, exist_ok=True)
    match sys.argv[1:]:
        case ["draw"]:
            draw()
        case ["reach"]:
            reach()
        case ["run", *numbers]:
            run([int(n) for n in numbers] or list(range(len(mutants()))))
        case ["again"]:
            again()
        case ["table"]:
            table()
        case _:
            sys.exit(__doc__)


if __name__ == "__main__":
    main()
