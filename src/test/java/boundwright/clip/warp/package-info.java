/**
 * Film as through a rotating camera: a still film, real or painted, is looked at through a pinhole camera that pans, tilts, zooms, shakes
 * and reads its rows one after the other, with the map of every frame known.
 */
@NullMarked
package boundwright.clip.warp;

import org.jspecify.annotations.NullMarked;
