"""What a leaf says, as text: Markdown, safe HTML, layouts."""
