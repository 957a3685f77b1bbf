### The canvas, the card and the chart.
