/**
 * Lengths and the two ways a coach writes them, estimates with an interval, the one exception that refuses bad
 * input in words, and arithmetic and secrets that several rooms need. This room answers: how is a number written, and how sure is it?
 */
@NullMarked
package boundwright.quantity;

import org.jspecify.annotations.NullMarked;

