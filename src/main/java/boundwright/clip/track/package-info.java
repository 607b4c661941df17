/** Body points over a clip, one coherent athlete: which leg is which in every frame, what is wild, what is missing and how sure. */
@NullMarked
package boundwright.clip.track;

import org.jspecify.annotations.NullMarked;

