/** What a small network trained for this program says of a clip: which foot stands, and where the legs are exchanged. */
@NullMarked
package boundwright.clip.propose;

import org.jspecify.annotations.NullMarked;
