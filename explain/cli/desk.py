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
@click.option("--edit", is_flag=True, help="Let problems be changed too, at the address that is printed for it.")
@click.option(
    "--class",
    "variants",
    is_flag=True,
    help="Personal variants too: of each folder in FOLDER that explain vary wrote, under codes (codes.csv).",
)
@click.option(
    "--behind",
    default="",
    metavar="https://HOST",
    help="The address that a reverse proxy with TLS serves this desk at: that Host and Origin alone are let in.",
)
@click.option("--bind", default="", metavar="ADDRESS", help="Listen there and not at 127.0.0.1; needs --behind.")
@click.option(
    "--keep",
    type=click.Path(path_type=Path),
    help="Keep how far each working gets in this SQLite file, with no name; /class shows what the class gets wrong.",
)
@click.option("--keep-lines", is_flag=True, help="Keep the lines too, under codes; explain tally reads them.")
@click.option("--days", type=click.IntRange(1, 3650), default=30, show_default=True, help="How long anything is kept.")
@click.option("--no-browser", is_flag=True, help="Open no browser; the address is printed all the same.")
def desk(
    folder: Path,
    port: int,
    jobs: int | None,
    edit: bool,
    variants: bool,
    behind: str,
    bind: str,
    keep: Path | None,
    keep_lines: bool,
    days: int,
    no_browser: bool,
) -> None:
    """Serve the problems of FOLDER as pages in the browser, from this machine, until Ctrl-C.

    A student types a working and learns which line first does not hold, with hints on request and no answer. Needs the
    extra `desk`: pip install 'worked-moments[desk]'.
    """
    from ..desk.serving import Wish, serve

    serve(Wish(folder, port, jobs or 0, variants, behind, bind, keep, keep_lines, days, not no_browser, edit))
