"""Writes the pages of the samples, kept in samples/pages: after a wanted change, run it and read what changed.

python tests/pages_of_samples.py
"""

from __future__ import annotations

from pathlib import Path

from explain import Walkthrough, work

SAMPLES = Path(__file__).parents[1] / "samples"
PAGES = SAMPLES / "pages"


def problems() -> list[Path]:
    """The problem files of the samples, in order."""
    return sorted(SAMPLES.glob("[0-9]*.toml"))


def markdown_with_figure(walkthrough: Walkthrough, stem: str) -> str:
    """The page in Markdown, its diagram as a file beside it."""
    from explain.write.markdown.pages import markdown

    return markdown(walkthrough.page, figure=lambda _: f"{stem}.svg")


def main() -> None:
    PAGES.mkdir(exist_ok=True)
    for path in problems():
        walkthrough = work(path)
        (PAGES / f"{path.stem}.md").write_text(markdown_with_figure(walkthrough, path.stem), encoding="utf-8")
        (PAGES / f"{path.stem}.svg").write_text(walkthrough.figure(), encoding="utf-8")


if __name__ == "__main__":
    main()
