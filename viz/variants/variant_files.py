"""A comparison of designs as a file: workbook, figures, or the pictures."""

from collections.abc import Sequence

from geometry.errors import BedcourseError
from geometry.variants.compare import Comparison
from viz.drawing.alone import alone
from viz.export.csvfile import to_csv
from viz.export.pdf import DocumentInfo, to_pdf
from viz.export.png import to_png
from viz.export.svg import to_svg
from viz.export.xlsxfile import to_xlsx
from viz.job import Job
from viz.variants import variant_tables
from viz.variants.variant_pictures import variants_pictures

_DPI = 150


def comparison_file(works: Sequence[Job], found: Comparison, ending: str) -> bytes:
    """Return a comparison as what a file's ending says.

    ending: ".xlsx" for all tables, ".csv" for the figures, ".pdf", ".svg" or ".png" for the
    pictures. Raises BedcourseError for another one, or where there is nothing to draw.
    """
    kind = ending.lower()
    if kind == ".xlsx":
        return to_xlsx(variant_tables.workbook(found, works[0].system))
    if kind == ".csv":
        return to_csv(variant_tables.figures(found)).encode()
    if kind not in (".pdf", ".svg", ".png"):
        raise BedcourseError(
            f"{ending or 'no ending'} is not what a comparison can be written as; "
            "name a file ending in .xlsx, .csv, .pdf, .svg or .png"
        )
    drawing = alone(variants_pictures(works, found.names)[0])
    if kind == ".pdf":
        return to_pdf([drawing], DocumentInfo(f"Compared: {', '.join(found.names)}"))
    svg = to_svg(drawing)
    return svg.encode() if kind == ".svg" else to_png(svg, _DPI)
