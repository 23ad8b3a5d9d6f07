"""The way of one problem through the folders, as it is imported and as it runs."""

from __future__ import annotations

import sys
from pathlib import Path
from types import FrameType

from imports import FILES, own

WALK = ("api", "problem", "mechanics", "solve", "check", "rules/checks", "walkthrough", "write/markdown")


def rests_on(name: str, folder: dict[str, str]) -> set[str]:
    """The stages that a stage imports directly."""
    modules = [module for module in FILES if folder[module] == name]
    return {folder[each] for module in modules for each in own(module)} & set(WALK) - {name}


def first_runs(problem: Path, folder: dict[str, str]) -> list[str]:
    """The stages in the order in which a problem on its way to a Markdown page first runs a function of theirs."""
    import explain

    files, seen = {str(path): folder[module] for module, path in FILES.items()}, list[str]()

    def watch(frame: FrameType, event: str, _: object) -> None:
        stage = files.get(frame.f_code.co_filename, "")
        if event == "call" and frame.f_code.co_name != "<module>" and stage in WALK and stage not in seen:
            seen.append(stage)

    explain.work(problem).markdown()  # so that nothing is imported while we watch
    work, before = explain.work, sys.getprofile()
    sys.setprofile(watch)
    try:
        work(problem).markdown()
    finally:
        sys.setprofile(before)
    return seen
