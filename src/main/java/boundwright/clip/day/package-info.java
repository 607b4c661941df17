/**
 * The films of whole sessions as the coach works with them: taken in, cut in the background, each rep named, matched with what was tapped
 * at the track, read, and logged after a nod. Where they are kept is left to the interface declared here.
 */
@NullMarked
package boundwright.clip.day;

import org.jspecify.annotations.NullMarked;
