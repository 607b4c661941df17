/**
 * Where films and their pictures are kept: in the data folder, or in an S3-compatible store that machines share. It answers: where is this
 * film, and is it really kept?
 */
@NullMarked
package boundwright.clip.keep;

import org.jspecify.annotations.NullMarked;
