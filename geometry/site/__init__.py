"""The work on site, stage by stage: what is laid, its levels, amounts, hold points, cautions."""
