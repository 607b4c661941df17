/**
 * The coach's clips: taken in, queued, read in the background, corrected, and logged as reps once the coach has nodded.
 * Where clips are kept and how the queue survives a restart is left to the interfaces declared here.
 */
@NullMarked
package boundwright.clip.desk;

import org.jspecify.annotations.NullMarked;

