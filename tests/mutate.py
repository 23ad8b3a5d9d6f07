"""Change one thing at a time in a module and see whether a test fails: `python tests/mutate.py explain/check.py --tests
"tests/test_check.py"`.

Each change is made in a copy of the project in a temporary folder. A change that no test notices has survived; one on
which the tests run on for ever, or on which they cannot even begin, is noticed. Without --tests those files run that
import the module themselves, or where none does those that import what imports it. Of a folder, the changes of all its
modules are one pot, from which --sample draws. What the tests leave is tried once more on those of --then, which may
take longer. Knows no module of the project by name.
"""

from __future__ import annotations

import argparse
import ast
import os
import random
import shutil
import signal
import sys
import tempfile
import time
from collections.abc import Iterator, Sequence
from copy import deepcopy
from functools import cache
from itertools import islice
from pathlib import Path
from typing import NamedTuple

import hypothesis  # noqa: F401 (the libraries that tests need are read once, here, and not by each process)
import mpmath  # noqa: F401
import numpy  # noqa: F401
import pytest
import sympy  # noqa: F401
from imports import FILES, ROOT, own

COPIED = ("explain", "rules", "tests", "samples", "pyproject.toml", "README.md", "DEVELOPERS.md", "LICENSE")
TURNED: dict[type[ast.AST], type[ast.AST]] = {
    ast.Eq: ast.NotEq,
    ast.NotEq: ast.Eq,
    ast.Lt: ast.LtE,
    ast.LtE: ast.Lt,
    ast.Gt: ast.GtE,
    ast.GtE: ast.Gt,
    ast.In: ast.NotIn,
    ast.NotIn: ast.In,
    ast.Is: ast.IsNot,
    ast.IsNot: ast.Is,
    ast.And: ast.Or,
    ast.Or: ast.And,
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.FloorDiv: ast.Mult,
    ast.Mod: ast.Mult,
    ast.Pow: ast.Mult,
    ast.LShift: ast.RShift,
    ast.RShift: ast.LShift,
    ast.BitAnd: ast.BitOr,
    ast.BitOr: ast.BitAnd,
}
NAMES = {"min": "max", "max": "min", "any": "all", "all": "any"}
UNTOUCHED = (ast.Import, ast.ImportFrom, ast.Raise, ast.Assert, ast.JoinedStr)  # nothing within these is changed


class Mutant(NamedTuple):
    """A change: the module's path, the line, what was done in words, and which change of which node it is."""

    path: Path
    line: int
    what: str
    place: int
    number: int

    @property
    def source(self) -> str:
        """The module's text with the change, made when it is asked for: few of many changes are drawn."""
        tree = ast.parse(_text(self.path))
        target = next(islice(_nodes(tree), self.place, None))
        new = [each for _, each in _changes(target)][self.number]
        return ast.unparse(ast.fix_missing_locations(_Swap(target, new).visit(tree)))


# ---------------------------------------------------------------------- what can be changed
@cache
def _text(path: Path) -> str:
    """A module as it was when its changes were drawn."""
    return path.read_text("utf-8")


def mutants(path: Path) -> list[Mutant]:
    """Every change of a module, one after another."""
    tree = ast.parse(_text(path))
    return [
        Mutant(path, node.lineno, what, place, number)
        for place, node in enumerate(_nodes(tree))
        for number, (what, _) in enumerate(_changes(node))
    ]


def _nodes(node: ast.AST) -> Iterator[ast.expr | ast.stmt]:
    """Expressions and statements in order, without notes, and nothing within messages of errors."""
    for name, value in ast.iter_fields(node):
        if name in ("annotation", "returns", "decorator_list", "bases"):
            continue
        for each in value if isinstance(value, list) else [value]:
            if not isinstance(each, ast.AST) or _is_note(each) or _is_assertion(each):
                continue
            if isinstance(each, ast.expr | ast.stmt):
                yield each
            if not isinstance(each, UNTOUCHED):
                yield from _nodes(each)


def _is_note(node: ast.AST) -> bool:
    """A docstring, a sum type, a list of slots or of what is exported, imports for types: nothing that decides."""
    text = isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)
    targets = [node.target] if isinstance(node, ast.AnnAssign) else node.targets if isinstance(node, ast.Assign) else []
    names = [each.id for each in targets if isinstance(each, ast.Name)]
    typing = isinstance(node, ast.If) and isinstance(node.test, ast.Name) and node.test.id == "TYPE_CHECKING"
    summed = (
        isinstance(node, ast.Assign)
        and isinstance(node.value, ast.Subscript)
        and getattr(node.value.value, "id", "") == "Union"
    )
    return text or typing or summed or "__all__" in names or "__slots__" in names


def _is_assertion(node: ast.AST) -> bool:
    """That two rows are of one length: where it is said, it is so."""
    return isinstance(node, ast.keyword) and node.arg == "strict" and ast.unparse(node.value) == "True"


def _changes(node: ast.expr | ast.stmt) -> Iterator[tuple[str, ast.AST]]:
    """What can be done to one node: words, and the node that takes its place."""
    match node:
        case ast.Compare(ops=ops):
            for place, op in enumerate(ops):
                if type(op) in TURNED:
                    new = deepcopy(node)
                    new.ops[place] = TURNED[type(op)]()
                    yield f"{type(op).__name__} to {TURNED[type(op)].__name__}", new
        case ast.BoolOp(op=op) | ast.BinOp(op=op) | ast.AugAssign(op=op) if type(op) in TURNED:
            new = deepcopy(node)
            new.op = TURNED[type(op)]()  # type: ignore[union-attr]
            yield f"{type(op).__name__} to {TURNED[type(op)].__name__}", new
        case ast.UnaryOp(op=ast.Not() | ast.USub(), operand=inner):
            yield f"without {type(node.op).__name__}", inner
        case ast.Constant(value=value):
            yield from ((f"{value!r} to {other!r}", ast.Constant(other)) for other in _others(value))
        case ast.Name(id=name) if name in NAMES and isinstance(node.ctx, ast.Load):
            yield f"{name} to {NAMES[name]}", ast.Name(NAMES[name], ast.Load())
    if isinstance(node, ast.If | ast.While | ast.IfExp):
        new = deepcopy(node)
        new.test = ast.UnaryOp(ast.Not(), node.test)
        yield "the condition turned round", new
    if (
        isinstance(node, ast.Return)
        and node.value is not None
        and not (isinstance(node.value, ast.Constant) and not node.value.value)
    ):
        yield "returns nothing", ast.Return(ast.Constant(None))
    if (
        isinstance(node, ast.Raise | ast.AugAssign | ast.Assign | ast.Delete)
        or isinstance(node, ast.Expr)
        and isinstance(node.value, ast.Call)
    ):
        yield "left out", ast.Pass()


def _others(value: object) -> tuple[object, ...]:
    match value:
        case bool():
            return (not value,)
        case int():
            return (value + 1,) if value < 2 else (value + 1, value - 1) if value < 20 else (value // 2,)
        case float():
            return (value * 2 or 1.0,)
        case str() if value:
            return (value + "~",)
    return ()


class _Swap(ast.NodeTransformer):
    def __init__(self, old: ast.AST, new: ast.AST) -> None:
        self.old, self.new = old, new

    def visit(self, node: ast.AST) -> ast.AST:
        return self.new if node is self.old else super().visit(node)


# ---------------------------------------------------------------------- which tests, and how they end
def tests_of(path: Path) -> list[str]:
    """The test files that import a module themselves, else those that import what rests on it directly."""
    module = next(name for name, each in FILES.items() if each == path)
    rest = {name for name in FILES if module in own(name)}
    texts = {each: _imported(each) for each in sorted((ROOT / "tests").glob("test_*.py"))}
    near = [each for each, names in texts.items() if module in names] or [
        each for each, names in texts.items() if names & rest
    ]
    return [str(each.relative_to(ROOT)) for each in near or texts]


def _imported(path: Path) -> set[str]:
    found: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module:
            found |= {node.module} | {f"{node.module}.{each.name}" for each in node.names}
        if isinstance(node, ast.Import):
            found |= {each.name for each in node.names}
    helpers = [path.parent / f"{name}.py" for name in found if (path.parent / f"{name}.py").exists()]
    return found.union(*map(_imported, helpers)) if helpers else found


class Running(NamedTuple):
    """The tests at work in a process of their own, which has its libraries from this one."""

    pid: int
    home: Path
    until: float


def begun(home: Path, tests: Sequence[str], patience: float) -> Running:
    """Let the tests begin on the copy in a folder."""
    pid = os.fork()
    if pid:
        return Running(pid, home, time.monotonic() + patience)
    try:
        os.setsid()
        nowhere = os.open(os.devnull, os.O_RDWR)
        for stream in (0, 1, 2):
            os.dup2(nowhere, stream)
        os.chdir(home)
        sys.meta_path[:] = [each for each in sys.meta_path if "editable" not in str(each).casefold()]
        sys.path[:] = [
            str(home),
            str(home / "tests"),
            *(each for each in sys.path if not each.startswith(str(ROOT / "tests")) and each != str(ROOT)),
        ]
        for name in [name for name in sys.modules if name.split(".")[0] in ("explain", "rules", "imports")]:
            del sys.modules[name]
        sys.dont_write_bytecode = True
        os._exit(pytest.main(["-x", "-q", "-p", "no:cacheprovider", *tests]))
    finally:
        os._exit(99)


def ended(running: Running) -> str:
    """ "passed", "failed", "for ever", or "" while they go on."""
    pid, status = os.waitpid(running.pid, os.WNOHANG)
    if pid:
        return "passed" if status == 0 else "failed"
    if time.monotonic() < running.until:
        return ""
    os.killpg(running.pid, signal.SIGKILL)  # the group that was begun for it, and nothing else
    os.waitpid(running.pid, 0)
    return "for ever"


def home_in(folder: Path) -> Path:
    """A copy of the project."""
    folder.mkdir()
    for name in COPIED:
        source = ROOT / name
        if source.is_dir():
            shutil.copytree(source, folder / name, ignore=shutil.ignore_patterns("__pycache__"))
        elif source.exists():
            shutil.copy(source, folder / name)
    return folder


def ends(chosen: Sequence[tuple[Path, str]], homes: Sequence[Path], tests: Sequence[str], patience: float) -> list[str]:
    """How the tests end for each module's changed text, with as many at a time as there are copies."""
    found, free, waiting, at_work = [""] * len(chosen), list(homes), list(enumerate(chosen)), dict[int, Running]()
    while waiting or at_work:
        while waiting and free:
            place, (path, source) = waiting.pop(0)
            home = free.pop()
            (home / path.relative_to(ROOT)).write_text(source, "utf-8")
            at_work[place] = begun(home, tests, patience)
        for place, running in list(at_work.items()):
            found[place] = ended(running)
            if found[place]:
                shutil.copy(chosen[place][0], running.home / chosen[place][0].relative_to(ROOT))
                free.append(at_work.pop(place).home)
        time.sleep(0.02)
    return found


def run(chosen: Sequence[Mutant], tests: Sequence[str], homes: Sequence[Path]) -> list[Mutant]:
    """Try changes on tests that pass as things are; returns what survived."""
    start = time.monotonic()
    unchanged = chosen[0].path
    if ends([(unchanged, unchanged.read_text("utf-8"))], homes[:1], tests, 1800) != ["passed"]:
        raise SystemExit(f"{' '.join(tests)}: the tests do not pass as things are, so nothing can be told")
    patience = 60 + 10 * (time.monotonic() - start)
    found = ends([(each.path, each.source) for each in chosen], homes, tests, patience)
    return [each for each, end in zip(chosen, found, strict=True) if end == "passed"]


def tried(chosen: Sequence[Mutant], tests: str, then: str, homes: Sequence[Path]) -> list[Mutant]:
    """What survives the tests asked for, or those of each module, and after them the slower ones."""
    left: list[Mutant] = []
    for path in [None] if tests else sorted({each.path for each in chosen}):
        own = [each for each in chosen if path in (None, each.path)]
        left += run(own, tests.split() if path is None else tests_of(path), homes) if own else []
    return run(left, then.split(), homes) if then and left else left


def told(name: Path, chosen: Sequence[Mutant], left: Sequence[Mutant]) -> None:
    for each in left:
        line = each.path.read_text("utf-8").splitlines()[each.line - 1].strip()
        print(f"  survived {each.path.relative_to(ROOT)}:{each.line}: {each.what}: {line}")
    print(f"{name.relative_to(ROOT)}: {len(chosen) - len(left)} of {len(chosen)} noticed", flush=True)


def pot(path: Path, lines: str) -> list[Mutant]:
    """Every change of a module, or of all the modules of a folder."""
    modules = sorted(path.rglob("*.py")) if path.is_dir() else [path]
    low, _, high = lines.partition("-")
    every = [each for module in modules for each in mutants(module)]
    return [each for each in every if int(low) <= each.line <= int(high or low)] if lines else every


def main() -> None:
    asks = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    asks.add_argument("modules", nargs="+", type=Path, help="modules, or folders of them")
    asks.add_argument("--tests", default="", help="test files for all modules, first those that fail soonest")
    asks.add_argument("--then", default="", help="test files for what has survived those")
    asks.add_argument("--sample", type=int, default=0, help="so many changes of each, drawn by the seed; 0: all")
    asks.add_argument("--seed", type=int, default=1)
    asks.add_argument("--jobs", type=int, default=2)
    asks.add_argument("--lines", default="", help="only changes in these lines, as in 10-20")
    asked = asks.parse_args()
    total = survived = 0
    with tempfile.TemporaryDirectory() as folder:
        homes = [home_in(Path(folder) / str(place)) for place in range(asked.jobs)]
        for module in asked.modules:
            every = pot(module.resolve(), asked.lines)
            chosen = random.Random(asked.seed).sample(every, min(asked.sample, len(every))) if asked.sample else every
            left = tried(chosen, asked.tests, asked.then, homes) if chosen else []
            told(module.resolve(), chosen, left)
            total, survived = total + len(chosen), survived + len(left)
    print(f"{total - survived} of {total} noticed, {100 * (total - survived) / max(total, 1):.1f} %")


if __name__ == "__main__":
    main()
