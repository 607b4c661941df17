/**
 * One clip read as a coach would: its contacts with feet, times, lengths and posture, the sequence they make, and what
 * changes when the coach puts something right by hand. Nothing here needs the film; the raw body points are enough, so a
 * clip can be read again at any time.
 */
@NullMarked
package boundwright.clip.reading;

import org.jspecify.annotations.NullMarked;

