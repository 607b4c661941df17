/**
 * Takes out of a film what it says of places, devices and names before it is kept: the pictures and the sound stay as they are, byte by byte. Films
 * are changed in place and never grow, so nothing is encoded or written anew.
 */
@NullMarked
package boundwright.clip.bare;

import org.jspecify.annotations.NullMarked;
