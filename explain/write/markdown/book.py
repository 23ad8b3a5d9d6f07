"""A volume as one Markdown file: contents with links, parts under numbered headings, an index. Knows no mechanics."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from ...document.passage import Text
from ...document.volume import Part, Volume, heading
from .pages import passages_markdown
from .line import escaped, markdown_line


def markdown_volume(volume: Volume) -> str:
    """The whole book; a part that is written already is taken as it is."""
    blocks = [*_cover(volume), *_contents(volume)]
    for part in volume.parts:
        blocks += [_heading(part), part.ready or passages_markdown(part.body)]
    return "\n\n".join(block for block in (*blocks, *_index(volume)) if block) + "\n"


def _cover(volume: Volume) -> Iterator[str]:
    yield "# " + _line(volume.title)
    for words in (volume.subtitle, ", ".join(volume.authors), volume.edition):
        if words:
            yield f"*{_line(words)}*"
    yield _line(volume.caution)


def _contents(volume: Volume) -> Iterator[str]:
    yield "# Contents"
    lines = [
        f"{'  ' * (part.level - 1)}- [{escaped(' '.join((part.number, part.title)).strip())}](#{part.anchor})"
        for part in volume.listed()
    ]
    yield "\n".join((*lines, *(["- [Index](#index-of-the-book)"] if volume.index else [])))


def _heading(part: Part) -> str:
    if not part.level:
        return ""
    number, title = heading(part)
    mark = f'<a id="{part.anchor}"></a>\n\n' if part.anchor else ""
    return f"{mark}{'#' * part.level} {_line(f'{number} {title}'.strip())}"


def _index(volume: Volume) -> Iterator[str]:
    if not volume.index:
        return
    yield '<a id="index-of-the-book"></a>\n\n# Index'
    for title, group in groupby(volume.index, key=lambda entry: entry.heading):
        yield f"## {title}"
        yield "\n".join(
            f"- {_line(entry.word)}: " + ", ".join(f"[{place.number}](#{place.anchor})" for place in entry.places)
            for entry in group
        )


def _line(words: str) -> str:
    return markdown_line((Text(words),))
