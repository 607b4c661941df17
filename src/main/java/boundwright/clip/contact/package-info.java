/** Which foot was on the ground from when to when and where, and how that compares with the drill that was set. */
@NullMarked
package boundwright.clip.contact;

import org.jspecify.annotations.NullMarked;

