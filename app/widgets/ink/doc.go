// Package ink draws filled shapes, strokes and hatches into an image, in pixels
// and with smooth edges. Widgets use it for what would need too many canvas
// objects: hatched strips, charts, pots drawn to scale.
//
// Coverage is worked out exactly by accumulating the signed area that each edge
// leaves in each pixel, as font rasterisers do (R. Levien, "Inside the fastest
// font renderer in the world", 2016). Shapes of one call are united when they run
// the same way round, so Stroke may overlap its own pieces. Limits: a shape that
// crosses itself loses the parts that run against each other; there is no text.
package ink
