/**
 * From a side-on clip to contacts, lengths, times and posture. This package wires the parts below it: {@code track}
 * (body points, left and right), {@code signal} (smoothing), {@code scale} (pixels to metres), {@code body} (centre of
 * mass and posture), {@code contact} (which foot landed where and when), {@code reading} (all of it
 * with the coach's corrections, and the teaching points in words).
 */
@NullMarked
package boundwright.clip;

import org.jspecify.annotations.NullMarked;

