"""Who imports whom, read from the files themselves."""

from __future__ import annotations

import ast
from functools import cache
from pathlib import Path

ROOT = Path(__file__).parent.parent
FILES = {
    ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__"): path
    for package in ("explain", "rules")
    for path in sorted((ROOT / package).rglob("*.py"))
}


@cache
def imports(module: str) -> frozenset[str]:
    """Everything a module imports, anywhere in it: modules of this project by their own names, all others by theirs."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(FILES[module].read_text("utf-8"))):
        if isinstance(node, ast.Import):
            found |= {each.name for each in node.names}
        if isinstance(node, ast.ImportFrom):
            base = _base(module, node)
            names = {each.name for each in node.names} - (
                {"__version__"} if base == "explain" else set()
            )  # a number is no part of the building
            inner = {f"{base}.{each}" for each in names} & FILES.keys()
            found |= inner | ({base} if len(inner) < len(names) else set())
    return frozenset(found)


def _base(module: str, node: ast.ImportFrom) -> str:
    """The absolute name of what stands after "from"."""
    if not node.level:
        return node.module or ""
    package = module.split(".") if FILES[module].stem == "__init__" else module.split(".")[:-1]
    start = package[: len(package) - node.level + 1]
    return ".".join([*start, *([node.module] if node.module else [])])


@cache
def own(module: str) -> frozenset[str]:
    """What it imports of this project."""
    return frozenset(each for each in imports(module) if each.split(".")[0] in ("explain", "rules"))


@cache
def below(module: str) -> frozenset[str]:
    """All modules of this project that it rests on, near and far."""
    found: set[str] = set()
    waiting = [module]
    while waiting:
        for each in own(waiting.pop()) - found:
            found.add(each)
            if each in FILES:
                waiting.append(each)
    return frozenset(found)


def importers(library: str) -> set[str]:
    """The modules that import a library or something in it."""
    return {
        module for module in FILES if any(each == library or each.startswith(f"{library}.") for each in imports(module))
    }
