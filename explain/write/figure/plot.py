"""A plot as a picture: which of its kinds is laid out where, as SVG and as rows of text. Decides no value."""

from __future__ import annotations

from ...document.passage import Axis, Picture, Plot
from .forces import PAPER
from .svg import svg
from .free_body import Layout, layout
from .plot_bars import bars
from .plot_lines import lines
from .plot_scale import marked, number


def plotted(plot: Plot, low: bool = False) -> Layout:
    """Where everything goes; what is `low` has larger type for its height."""
    return bars(plot, low) if plot.kind == "bars" else lines(plot, low)


def laid_out(of: Picture | Plot) -> Layout:
    """A free-body diagram or a plot, in pixels."""
    return plotted(of) if isinstance(of, Plot) else layout(of.drawing)


def drawn(of: Picture | Plot, ident: str = "figure") -> str:
    """A free-body diagram or a plot as one SVG that stands alone; `ident` makes its identifiers unique on a page."""
    laid = laid_out(of)
    return svg(laid.view, laid.shapes, laid.labels, ident, of.title, of.description, PAPER)


def rows(plot: Plot) -> tuple[tuple[str, ...], ...]:
    """The values as a table of text: a header, then a row for each name or each x."""
    header = (_headed(plot.x), *(_headed(Axis(curve.name or plot.y.title, plot.y.unit)) for curve in plot.curves))
    values = [dict(curve.points) for curve in plot.curves]
    places = (
        [float(each) for each in range(len(plot.names))]
        if plot.kind == "bars"
        else sorted({x for each in values for x in each})
    )
    return header, *((_name(plot, x), *(_told(plot, each.get(x)) for each in values)) for x in places)


def _headed(axis: Axis) -> str:
    return f"{axis.title} ({axis.unit})" if axis.unit else axis.title


def _name(plot: Plot, x: float) -> str:
    return plot.names[int(x)] if plot.kind == "bars" else marked(f"{x:g}".replace("-", "−"), plot.comma)


def _told(plot: Plot, y: float | None) -> str:
    return "–" if y is None else marked(number(y, plot.figures), plot.comma)
