"""The publication as web pages. In: the site's view and its photographs. Out: products under "site/"."""
