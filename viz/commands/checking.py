"""The command `check`: faults or findings, in words or as JSON."""

import json
import sys

from geometry.errors import DesignError
from geometry.report import Report
from viz.commands import printing
from viz.commands.asking import design_text
from viz.job import job


def check_design(design: str, as_json: bool) -> bool:
    """Print what was found; tell whether nothing says stop. Raises DesignError with the faults."""
    try:
        report = job(design_text(design)).report
    except DesignError as error:
        if as_json:
            sys.stdout.write(_faults(error))
        raise
    if as_json:
        sys.stdout.write(report.to_json())
    else:
        _say(report)
    return report.worst != "stop"


def _faults(error: DesignError) -> str:
    rows = [{"place": f.place, "sentence": f.sentence, "line": f.line} for f in error.faults]
    return json.dumps({"faults": rows}, indent=2) + "\n"


def _say(report: Report) -> None:
    verdict = {
        "fine": "The design can be built as it is.",
        "look": "The design can be built; look again at what is marked ?.",
        "stop": "The design can be drawn, but something is wrong: see what is marked !.",
    }[report.worst]
    printing.findings(report)
    printing.lines(["", verdict])
    printing.cautions(report)
