"""Equations of water in and around the drain: one file a subject, SI floats in and out."""
