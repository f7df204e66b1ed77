"""A finished sheet: figures in their places inside border and title block."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from geometry.project import Design
from viz.drawing.figure import Figure
from viz.drawing.marks import Mark
from viz.drawing.page import Drawing, Paper
from viz.sheets.titleblock import TitleBlock, title_block
from viz.sheets.words import AS_SHOWN, sheet_of


@dataclass(frozen=True)
class Numbered:
    """A figure in its place, with its number on the sheet; 0 for words and tables."""

    number: int
    figure: Figure


@dataclass(frozen=True)
class Leaf:
    """What one sheet holds, before the whole set is known."""

    number: str
    title: str
    figures: tuple[Numbered, ...]


@dataclass(frozen=True)
class Sheet:
    """One sheet of the set: its number and title, the titles of its drawings, and the drawing."""

    number: str
    title: str
    contents: tuple[str, ...]
    drawing: Drawing


def block_of(design: Design) -> TitleBlock:
    """Return the words of a design that stand in every title block."""
    about = design.project
    return TitleBlock(
        about.name,
        about.address,
        about.parcel,
        about.drawn_for,
        about.prepared_by,
        about.date,
        about.revision,
        about.code,
    )


def contents(figures: Sequence[Numbered]) -> tuple[str, ...]:
    """Return the titles of drawings, each with its number on the sheet; of words, each once."""
    rows = (f"{n.number} {n.figure.title}" if n.number else n.figure.title for n in figures)
    return tuple(dict.fromkeys(rows))


def bound(leaves: Sequence[Leaf], paper: Paper, design: Design) -> tuple[Sheet, ...]:
    """Return the leaves of a set as sheets, in the order of their numbers."""
    block = block_of(design)
    ordered = sorted(leaves, key=lambda leaf: leaf.number)
    return tuple(
        _sheet(leaf, paper, replace(block, count=sheet_of(place, len(ordered))))
        for place, leaf in enumerate(ordered, start=1)
    )


def _sheet(leaf: Leaf, paper: Paper, block: TitleBlock) -> Sheet:
    said = replace(block, title=leaf.title, number=leaf.number, scale=_scale_words(leaf, paper))
    inside: tuple[Mark, ...] = tuple(m for n in leaf.figures for m in n.figure.marks)
    marks = (*inside, *title_block(paper, said))
    title = " ".join(filter(None, (leaf.number, leaf.title)))
    ratio = next((n.figure.scale.ratio for n in leaf.figures if n.figure.scale), 1)
    drawing = Drawing(paper.width, paper.height, title, ratio, marks)
    return Sheet(leaf.number, leaf.title, contents(leaf.figures), drawing)


def _scale_words(leaf: Leaf, paper: Paper) -> str:
    names = dict.fromkeys(n.figure.scale.name for n in leaf.figures if n.figure.scale)
    scale = {0: "", 1: f"Scale {next(iter(names), '')}"}.get(len(names), AS_SHOWN)
    return ", ".join(filter(None, (scale, paper.name)))
