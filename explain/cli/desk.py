"""The command that serves pages in the browser; everything else is imported when it runs."""

from __future__ import annotations

from pathlib import Path

import click


@click.command()
@click.argument("folder", type=click.Path(path_type=Path))
@click.option(
    "--port",
    type=click.IntRange(0, 65535),
    default=0,
    show_default="any that is free",
    help="The port to serve at.",
)
@click.option(
    "--jobs", type=click.IntRange(1, 64), default=None, help="How many processes judge.  [default: one a core]"
)
@click.option("--no-browser", is_flag=True, help="Open no browser; the address is printed all the same.")
def desk(folder: Path, port: int, jobs: int | None, no_browser: bool) -> None:
    """Serve the problems of FOLDER as pages in the browser, from this machine, until Ctrl-C.

    A student types a working and learns which line first does not hold, with hints on request and no answer. Needs the
    extra `desk`: pip install 'worked-moments[desk]'.
    """
    from ..desk.serving import Wish, serve

    serve(Wish(folder, port, jobs or 0, not no_browser))
