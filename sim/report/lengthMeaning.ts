/** From where to where the length of a trumpet counts: the same words and drawing everywhere, valve left. */

export const LENGTH_MEANING =
  "A trumpet's length counts along its centre line from the plane of the rim of the mouth to the " +
  'face of the throttle body. The bellmouth is part of it; the throttle body, the port and the ' +
  'valve are not.';

export const LENGTH_DRAWING = `\
  valve       head face      body face                            rim plane
      |             |              |                                    |
      |             |              |                                   /|
      +=============+==============+================================--' |
      |    port     |     body     |              trumpet               | air
      +=============+==============+================================--. |
      |             |              |                                   \\|
      |             |              |                                    |
                                   |<--------- length to cut ---------->|
                                            bellmouth included`;
