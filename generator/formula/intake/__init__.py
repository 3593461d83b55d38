"""The only place where a recipe's document becomes meaning: located nodes in, `written` values out."""
