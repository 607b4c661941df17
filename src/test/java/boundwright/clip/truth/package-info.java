/**
 * A made-up bounding athlete of whom everything is known at every moment, a camera that looks at them, and noise like
 * that of a body-point finder. Invented; no evidence about athletes.
 */
@NullMarked
package boundwright.clip.truth;

import org.jspecify.annotations.NullMarked;

