/** Whole scenes painted for tests: a training session with several athletes, of which it is known who did what and when. */
@NullMarked
package boundwright.clip.painted;

import org.jspecify.annotations.NullMarked;
