"""A volume as HTML elements, for a screen and for paper alike: title page, contents, parts, index. Knows no style and
no passage.

Whoever calls gives the markup of a part's body.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import groupby
from types import MappingProxyType

from ...document.volume import Entry, Part, Volume, heading
from .elements import text

INDEX = "index-of-the-book"  # its anchor
Body = Callable[[Part], str]


def elements_of(volume: Volume, body: Body) -> Iterator[str]:
    """The whole volume, element by element."""
    yield from front(volume)
    yield "<main>"
    for part in volume.parts:
        yield section(part, body(part))
    if volume.index:
        yield back(volume.index)
    yield "</main>"


def front(volume: Volume, pages: Mapping[str, int] = MappingProxyType({})) -> Iterator[str]:
    """Title page and contents; `pages` are those of anchors, where they are known beforehand."""
    yield _cover(volume)
    yield _contents(volume, pages)


def section(part: Part, body: str, more: str = "") -> str:
    """One part with its body; `more` are further attributes."""
    return f'<section class="in-{part.kind}"{more}>{_heading(part)}{body}</section>'


def _cover(volume: Volume) -> str:
    subtitle = f'<p class="subtitle">{text(volume.subtitle)}</p>' if volume.subtitle else ""
    authors = f'<p class="authors">{text(", ".join(volume.authors))}</p>' if volume.authors else ""
    return (
        f'<header class="cover"><h1 class="title">{text(volume.title)}</h1>{subtitle}{authors}'
        f'<p class="edition">{text(volume.edition)}</p><p class="caution" '
        f'data-foot="{text(volume.foot)}">{text(volume.caution)}</p></header>'
    )


def _contents(volume: Volume, pages: Mapping[str, int]) -> str:
    listed = list(volume.listed()) + ([Part("index", INDEX, 1, "", "Index")] if volume.index else [])
    items = (
        f'<li class="level-{part.level}"><a {_to(part.anchor, pages)}>{_numbered(part.number, part.title)}</a></li>'
        for part in listed
    )
    return f'<nav class="contents" aria-label="Contents"><h1>Contents</h1><ul role="list">{"".join(items)}</ul></nav>'


def _to(anchor: str, pages: Mapping[str, int]) -> str:
    """The attributes of a link, with the page that it leads to."""
    return f'href="#{text(anchor)}"' + (f' data-page="{pages[anchor]}"' if anchor in pages else "")


def _numbered(number: str, title: str) -> str:
    return (
        f'<span class="number">{text(number)}</span> ' if number else ""
    ) + f'<span class="words">{text(title)}</span>'


def _heading(part: Part) -> str:
    if not part.level:
        return ""
    number, title = heading(part)
    anchor = f' id="{text(part.anchor)}"' if part.anchor else ""
    return f"<h{part.level}{anchor}>{_numbered(number, title)}</h{part.level}>"


def back(entries: Sequence[Entry], pages: Mapping[str, int] = MappingProxyType({}), more: str = "") -> str:
    """The index; `pages` as in `front`, `more` as in `section`."""
    groups = (
        f"<h2>{text(title)}</h2><ul>{''.join(_entry(each, pages) for each in group)}</ul>"
        for title, group in groupby(entries, key=lambda entry: entry.heading)
    )
    return (
        f'<section class="in-index"{more}><h1 id="{INDEX}">Index</h1><p>The numbers are those of problems.</p>'
        f'<div class="entries">{"".join(groups)}</div></section>'
    )


def _entry(entry: Entry, pages: Mapping[str, int]) -> str:
    places = ", ".join(f"<a {_to(place.anchor, pages)}>{text(place.number)}</a>" for place in entry.places)
    return f"<li>{text(entry.word)}, {places}</li>"
