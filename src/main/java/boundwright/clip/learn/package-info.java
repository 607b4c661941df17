/** Clips that a coach agreed to as labels, and the contact network trained further by them. Knows no desk, no page, no command. */
@NullMarked
package boundwright.clip.learn;

import org.jspecify.annotations.NullMarked;
