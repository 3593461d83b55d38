"""Tinleaf: one recipe file in; web page, cards, tags, description and data out."""
