"""The findings of one design as a document: for inspector and engineer, as PDF and as a page."""
