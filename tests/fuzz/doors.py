"""A process of its own with little memory: files in, what became of each out, as lines of JSON.

`python -m tests.fuzz.doors FOLDER`: the files of FOLDER/design, FOLDER/edit, FOLDER/shots,
FOLDER/tickets, FOLDER/kept.
"""

import json
import resource
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import suppress
from functools import partial
from pathlib import Path

# What the system's own count of resources tells is the starting process's memory too: not that.
from tests.bench.memory import peak_mb

# Address space the process may take, and what is taken of it at the most, bytes.
MEMORY, PEAK = 3 * 1024**3, 700 * 1024**2
# Processor's seconds for one file; the whole process is stopped by force beyond its sum.
SECONDS = 10.0

Door = Callable[[Path], object]


def reading() -> Iterator[Door]:
    """What reads designs, shots and tickets; each door bears its folder's name."""
    from geometry.designfile import load, load_bytes, read_design
    from geometry.layout.lay import lay_out
    from geometry.survey.asdug import as_dug
    from geometry.survey.reading import LARGEST_BYTES, read_shots
    from geometry.takeoff.deliveries import arrived
    from geometry.takeoff.tickets import read_tickets
    from viz.carried import demo

    house = lay_out(read_design(load(demo())))

    def design(file: Path) -> object:
        return lay_out(read_design(load(file)))

    def shots(file: Path) -> object:
        return as_dug(house, read_shots(load_bytes(file, LARGEST_BYTES), house.design), None)

    def tickets(file: Path) -> object:
        return arrived(house, read_tickets(load(file)).tickets)

    yield from (design, shots, tickets)


def changing() -> Iterator[Door]:
    """What changes a design's text, and what goes on from a batch's kept results."""
    from geometry.designfile import edited, load
    from geometry.errors import BedcourseError
    from geometry.planfile.change import corner_to, side_to
    from viz.batch.designs import Asked
    from viz.batch.outcome import Outcome, from_json
    from viz.batch.run import Line
    from viz.batch.table import table
    from viz.export.csvfile import to_csv
    from viz.export.xlsxfile import to_xlsx

    def edit(file: Path) -> object:
        text = load(file)
        for how in (
            partial(edited, text, ("project", "address"), "x"),
            partial(corner_to, text, 0, 0, (1.0, 1.0)),
            partial(side_to, text, 0, 0, "5 ft"),
        ):
            with suppress(BedcourseError):
                how()
        return text

    def kept(file: Path) -> object:
        found = from_json(load(file))
        if found is None:
            raise BedcourseError("no kept result")
        made = table([Line(Asked("a", ""), found), Line(Asked("b", ""), Outcome("died"))])
        return to_csv(made).encode(), to_xlsx([("Designs", made)])

    yield from (edit, kept)


def main(folder: Path) -> None:
    """Try every file; print its name, its seconds, and the sentence or the kind of failure."""
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
    from geometry.errors import BedcourseError

    for door in (*reading(), *changing()):
        for file in sorted((folder / door.__name__).glob("*")):
            start, said, failed = time.process_time(), "", ""
            try:
                door(file)
            except BedcourseError as error:
                said = str(error)
            except Exception as error:
                failed = f"{type(error).__name__}: {error}"
            row = {
                "file": f"{door.__name__}/{file.name}",
                "said": said[:2000],
                "failed": failed[:300],
            }
            sys.stdout.write(json.dumps({**row, "seconds": time.process_time() - start}) + "\n")
            sys.stdout.flush()
    sys.stdout.write(json.dumps({"peak": peak_mb() * 1024**2}) + "\n")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
