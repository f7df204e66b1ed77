"""Arguments and options that several commands share."""

from pathlib import Path
from typing import Annotated

import typer

Design = Annotated[
    str, typer.Argument(metavar="DESIGN", help="a design file, `demo`, or - for standard input")
]
Json = Annotated[bool, typer.Option("--json", help="figures for other programs, on one output")]
Paper = Annotated[str | None, typer.Option(help="ARCH D, ARCH C, ANSI B, letter, A1, A3 or A4")]
SmallPaper = Annotated[str | None, typer.Option("--paper", help="letter or A4")]
Tongue = Annotated[str, typer.Option("--language", help="en or es")]
Scale = Annotated[str | None, typer.Option(help='of sections, such as 1:48 or "1:20"')]
Dpi = Annotated[float, typer.Option(min=30, max=600, help="dots for an inch of paper, for PNG")]
Out = Annotated[Path, typer.Option("--out", "-o", help="the file to write")]

# The views a model can be drawn in as a picture.
VIEWS = (
    "for PNG: whole, cutaway, exploded, drain-from-below, wrap-opened, or a stage such as "
    "stage-01-subgrade; a wrong name lists the design's own"
)
