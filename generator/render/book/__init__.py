"""A selection of bakes as a book. In: its view and its pictures. Out: a PDF to print, or an EPUB to read."""
