"""One problem of a book worked, composed and written: what a process of the crew does. Loads the mechanics when it
is first needed.
"""

from __future__ import annotations

from collections.abc import Callable

from ..document.passage import Passage, Picture, Plot
from .cache import Cache
from .task import Body, Task, Worked

PRELOAD = (
    "explain.api",
    "explain.walkthrough.exercise_sheet",
    "explain.manual.worker",
    "explain.manual.problem_pages",
    "explain.write.html.pages",
    "explain.write.markdown.pages",
)


def work_one(task: Task) -> Worked:
    """A problem in the format of its task, kept on disk on the way. Raises Fault, NoWay, and whatever a fault of the
    program raises.
    """
    cache = Cache(task.folder)
    composed = cache.read(task.key)
    if composed is None:
        from .problem_pages import composed_of

        composed = composed_of(task)
        cache.keep(task.key, composed)
    if task.form == "pdf":
        return composed
    written = _written(composed, task)
    cache.keep(task.written_key, written)
    return written


def _written(composed: Worked, task: Task) -> Worked:
    figures: dict[str, str] = {}
    write = _as_html(task) if task.form == "html" else _as_markdown(task, figures)
    pages = {name: write(getattr(composed, name)) for name in task.pages}
    return Worked(composed.facts, figures=tuple(figures.items()), **pages)


def _as_html(task: Task) -> Callable[[Body], str]:
    from ..write.html.pages import passages_html

    return lambda body: passages_html(_passages(body), task.label)


def _as_markdown(task: Task, figures: dict[str, str]) -> Callable[[Body], str]:
    """`figures` is filled with the drawings by the names that the text calls them."""
    from ..write.figure.free_body import figure
    from ..write.markdown.pages import passages_markdown

    def drawn(picture: Picture | Plot) -> str:
        if isinstance(picture, Plot):
            return ""
        name = f"{task.label}-{len(figures) + 1}.svg" if figures else f"{task.label}.svg"
        figures[name] = figure(picture, task.label)
        return f"{task.figures}/{name}"

    return lambda body: passages_markdown(_passages(body), drawn)


def _passages(body: Body) -> tuple[Passage, ...]:
    return body if isinstance(body, tuple) else ()
