/** The teaching points of bounding judged from what was measured, in words and with how sure. */
@NullMarked
package boundwright.clip.verdict;

import org.jspecify.annotations.NullMarked;
