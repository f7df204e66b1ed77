"""All that is looked at: drawings, pictures, tables, commands and panels."""
