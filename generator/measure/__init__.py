"""Exact amounts as a home baker writes them; knows no recipe, no ingredient and no file.

In: text (`430 g`, `1-1/2 cups`, `gas 4`, `1 h 30 min`, `9 x 5 x 3 in`). Out: frozen values of exact
fractions, or None where the text is no such thing. No text raises; any length is read in linear time.
"""
