"""The command line: `bedcourse`. Words in, tables and files out; nothing is computed here."""

import gc
import os
from pathlib import Path
from typing import Annotated

import typer

from viz.commands import batching, comparing, data, finding, onsite, saying
from viz.commands.options import VIEWS, Design, Dpi, Json, Out, Paper, Scale, SmallPaper
from viz.commands.saying import careful

app = typer.Typer(
    name="bedcourse",
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
)


def _version(wanted: bool) -> None:
    if wanted:
        from importlib.metadata import version

        saying.say(f"bedcourse {version('bedcourse')}")
        raise typer.Exit


@app.callback()
def _options(
    version: Annotated[
        bool, typer.Option("--version", callback=_version, is_eager=True, help="print the version")
    ] = False,
) -> None:
    """Footings, piers, layered floor and perimeter drain, all levels against top of footing."""


@app.command()
@careful
def start(
    file: Annotated[Path, typer.Argument(help="the file to write")] = Path("design.toml"),
    force: Annotated[bool, typer.Option("--force", help="write over a file that is there")] = False,
) -> None:
    """Write a first design file with notes, to be edited."""
    from geometry.designfile import save, start_text
    from geometry.errors import BedcourseError

    if file.exists() and not force:
        raise BedcourseError(f"{file} is already there; choose another name, or add --force")
    save(file, start_text())
    saying.say(f"Wrote {file}. Edit it, then run `bedcourse check {file}`.")


@app.command()
@careful
def check(design: Design, as_json: Json = False) -> None:
    """Say what is wrong with a design, or what was found about it."""
    from viz.commands.checking import check_design

    if not check_design(design, as_json):
        raise typer.Exit(saying.STOPS)


@app.command()
@careful
def levels(design: Design, as_json: Json = False) -> None:
    """Print every level: from TOF, as elevation, as rod reading."""
    from viz.commands.levelling import show_levels

    show_levels(design, as_json)


@app.command()
@careful
def volumes(design: Design, as_json: Json = False) -> None:
    """Print the volume of every part and material in place."""
    from viz.commands.levelling import show_volumes

    show_volumes(design, as_json)


@app.command()
@careful
def order(
    design: Design,
    csv: Annotated[Path | None, typer.Option("--csv", help="a file for the figures")] = None,
    xlsx: Annotated[Path | None, typer.Option("--xlsx", help="a workbook of all tables")] = None,
    pdf: Annotated[
        Path | None, typer.Option("--pdf", help="a sheet for the supplier, with boards as laid")
    ] = None,
    paper: SmallPaper = None,
    as_json: Json = False,
) -> None:
    """Print what to order: in place, allowances, to buy, units sold, loads and cuts."""
    from viz.commands.ordering import show_order

    show_order(design, csv, xlsx, as_json)
    if pdf is not None:
        from viz.commands.siting import Asked, write_order

        write_order(design, Asked(pdf, paper, "en"))
        saying.tell(f"Wrote {pdf}.")


@app.command()
@careful
def deliveries(
    design: Design,
    tickets: Annotated[Path, typer.Argument(help="a list: date, material, amount, place")],
    add: Annotated[
        str | None, typer.Option(help='one more ticket, "2026-04-02, stone-57, 14.2 tons, floor"')
    ] = None,
    instead: Annotated[
        str | None, typer.Option(help="a material to make up what is short with")
    ] = None,
) -> None:
    """Print what has arrived of stone and sand, what it covers, and what is short."""
    from viz.commands.ordering import show_deliveries

    show_deliveries(design, tickets, add, instead)


@app.command()
@careful
def drain(design: Design, as_json: Json = False) -> None:
    """Print the drain's heights, the rules on them, and how much fall there is room for."""
    from viz.commands.draining import show_drain

    show_drain(design, as_json)


@app.command()
@careful
def water(design: Design, as_json: Json = False) -> None:
    """Print what water comes, what carries it, how the pit rises over the storm, what floats."""
    from viz.commands.watering import show_water

    show_water(design, as_json)


@app.command()
@careful
def survey(
    design: Design,
    shots: Annotated[Path, typer.Argument(help="a CSV file: point,x,y,rod,what")],
    out: Annotated[
        Path | None, typer.Option("--out", "-o", help="the map, as .svg or .png")
    ] = None,
    csv: Annotated[Path | None, typer.Option("--csv", help="a file for every shot judged")] = None,
    area: Annotated[str, typer.Option(help="of the map; the first that was shot")] = "",
    least: Annotated[str | None, typer.Option(help="least thickness of the base")] = None,
    scale: Scale = None,
    dpi: Dpi = 150,
    as_json: Json = False,
) -> None:
    """Hold shots of the dug ground and of concrete against the design."""
    from viz.commands.surveying import Asked, show_survey

    if not show_survey(design, Asked(shots, out, csv, area, least, scale, dpi, as_json)):
        raise typer.Exit(saying.STOPS)


@app.command()
@careful
def soil(design: Design, as_json: Json = False) -> None:
    """Print what the soil does to drain and wall: filter, pipe, push of the fill, cleanouts."""
    from viz.commands.grounding import show_soil

    show_soil(design, as_json)


@app.command()
@careful
def warmth(design: Design, as_json: Json = False) -> None:
    """Print how warm the floor is: layers, heat to the ground, its edge, the foam under load."""
    from viz.commands.warming import show_warmth

    show_warmth(design, as_json)


@app.command()
@careful
def section(
    design: Design,
    out: Out,
    start: Annotated[str | None, typer.Option("--from", help='one end of the cut, "x, y"')] = None,
    end: Annotated[str | None, typer.Option("--to", help='the other end, "x, y"')] = None,
    via: Annotated[
        str | None, typer.Option("--via", help='corners between, "x, y; x, y": the cut jogs')
    ] = None,
    cut: Annotated[str, typer.Option("--cut", help="or one of: across, pier, sump")] = "across",
    scale: Scale = None,
    paper: Paper = None,
    window: Annotated[
        str | None, typer.Option(help='part to show, "left, low, right, high" or "detail"')
    ] = None,
    dpi: Dpi = 150,
) -> None:
    """Draw a section to scale, with labels, levels and dimensions, as SVG, PNG or PDF."""
    from viz.commands.drawing import Asked, draw_section

    draw_section(design, Asked(start, end, via, cut, scale, paper, window, dpi), out)
    saying.say(f"Wrote {out}.")


@app.command()
@careful
def sheets(
    design: Design,
    out: Annotated[Path, typer.Option("--out", "-o", help="a folder, or a file ending in .pdf")],
    paper: Paper = None,
    scale: Scale = None,
    dpi: Dpi = 150,
) -> None:
    """Draw the permit set: plan, sections, details, drain, schedules, notes.

    Into a folder it comes as one PDF and as SVG and PNG of every sheet.
    """
    from viz.commands import printing
    from viz.commands.drawing import draw_sheets

    files = draw_sheets(design, out, paper, scale, dpi)
    printing.written(files)


@app.command()
@careful
def model(
    design: Design,
    out: Out,
    view: Annotated[str, typer.Option(help=VIEWS)] = "whole",
) -> None:
    """Write the model: GLB, IFC, HTML to turn it, or PNG."""
    from viz.commands.drawing import write_model

    write_model(design, view, out)
    saying.say(f"Wrote {out}.")


@app.command()
@careful
def build(
    design: Design, out: Annotated[Path, typer.Option("--out", "-o", help="the folder to write")]
) -> None:
    """Issue the set: report, tables, sections, model, pictures."""
    from viz.commands import printing
    from viz.commands.asking import design_text
    from viz.issue import issue

    issued = issue(design_text(design), out, lambda what: saying.tell(f"Making {what} ..."))
    printing.written(issued.files, issued.notes)
    printing.findings(issued.report, gravest_only=True)
    printing.cautions(issued.report)


@app.command(name="app")
@careful
def open_app(
    design: Annotated[str | None, typer.Argument(metavar="[DESIGN]")] = None,
    port: Annotated[int, typer.Option(min=1, max=65535, help="of this machine alone")] = 8501,
) -> None:
    """Open the app in the browser, for this machine alone."""
    from viz.commands.opening import run_app

    raise typer.Exit(run_app(design, port))


for commands in (onsite, data, comparing, finding, batching):
    commands.add(app)


def run() -> None:
    """Run the command line."""
    # What is loaded at the start stays: looking through it for rubbish takes a sixth of a start.
    gc.set_threshold(50_000)
    # Records are read by our own rules alone; looking for others' plugins reads every package.
    os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")
    app()
