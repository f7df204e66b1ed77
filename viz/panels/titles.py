"""The controls of the title block: whose drawings these are, of what, and when."""

from viz.panels.fields import Field, alone, pair


def _field(key: str, label: str, more: str = "") -> Field:
    return Field(("project", key), label, help=more)


def title_block() -> None:
    """Show the words that stand in the title block of every sheet."""
    alone(_field("name", "Project"))
    alone(_field("address", "Address"))
    alone(_field("parcel", "Parcel", "the lot as the land register knows it"))
    pair(_field("drawn_for", "Drawn for", "who builds"), _field("prepared_by", "Prepared by"))
    pair(_field("date", "Date"), _field("revision", "Revision"))
    alone(_field("code", "Code and edition", "as the building department names it"))
