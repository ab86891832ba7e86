#pragma once
// Ordinary benches, kept apart from those that the rules were mended on: slips made on these say what the findings are worth elsewhere.
// Nobody looks at them to change a rule; whoever must, moves the bench to sound_benches.h and puts another one here.

#include "support/sound_benches.h"

#include <span>

namespace tiepoint::test {

inline std::span<const SoundBench> heldOutBenches() {
    static constexpr SoundBench kBenches[] = {
        {"mast light",
         "full; PS1 top+2 bottom-2 6; R1 b41 b47 390; D1 d47 d50 green; W1 top+35 a41 red; W2 a50 top-41 black; W3 "
         "top-50 bottom-50 black"},
        {"mast light below",
         "half; PS1 bottom+5 bottom-5 5; R1 g20 g25 270; D1 h25 h27 amber; W1 bottom+17 j20 red; W2 j27 bottom-23 "
         "black"},
        {"pier lamp on three cells",
         "half; CE1 top+2 bottom-2 3; R1 d4 d9 220; D1 b9 b12 red; W1 top+4 a4 red; W2 a12 top-10 black; W3 top-20 "
         "bottom-20 black"},
        {"two chains on nine volts",
         "half; KB1 top+2 bottom-2; R1 d2 d7 470; D1 e7 f7 green; D2 h7 h10 green; R2 d17 d22 560; D3 e22 f22 amber; "
         "D4 g22 g25 amber; W1 top+2 a2 red; "
         "W2 j10 bottom-9 black; W3 top+15 a17 red; W4 j25 bottom-21 black"},
        {"sluice: either of two buttons",
         "full; PS1 top+3 bottom-3 5; S1 e20; S2 e30; R1 g32 g38 330; D1 h38 h41 red; W1 top+16 a20 red; W2 top+25 a30 "
         "red; "
         "W3 h22 i32 yellow; W4 j41 bottom-33 black"},
        {"sluice: both of two buttons on one side",
         "full; PS1 top+3 top-3 5; S1 b20; S2 b30; R1 d32 d38 330; D1 b38 b41 red; W1 top+16 a20 red; W2 a22 a30 "
         "yellow; W3 a41 top-33 black"},
        {"horn lamp with a button in minus",
         "half; PS1 top+3 bottom-3 5; R1 b4 b9 330; D1 c9 c12 red; S1 e12; W1 top+4 a4 red; W2 j14 bottom-12 black"},
        {"day or night",
         "half; PS1 top+3 bottom-3 5; SW1 g14 b; R1 i16 i21 330; D1 g21 g24 green; R2 h14 h9 330; D2 f9 f6 red; W1 "
         "bottom+13 j15 red; "
         "W2 j24 bottom-21 black; W3 j6 bottom-5 black; W4 top+20 bottom+20 red"},
        {"depth gauge of three resistors",
         "half; PS1 top+3 bottom-3 9; R1 b3 b8 2200; R2 c8 c13 1000; R3 d13 d18 4700; W1 top+3 a3 red; W2 e18 f18 "
         "green; W3 j18 bottom-16 black"},
        {"two tide lamps on one rail pair",
         "half; PS1 top+3 top-3 5; R1 b4 b8 330; D1 d8 d11 red; R2 b15 b19 330; D2 d19 d22 red; W1 top+4 a4 red; W2 "
         "a11 top-9 black; "
         "W3 top+13 a15 red; W4 a22 top-19 black"},
        {"steering light with a guard",
         "half; PS1 bottom+3 bottom-3 6; V1 h3 h7; R1 i7 i12 330; D1 g12 g15 red; W1 bottom+3 j3 red; W2 j15 bottom-13 "
         "black"},
        {"cabin dimmer below",
         "half; PS1 top+3 bottom-3 5; RV1 f8 1000 0.5; R1 i10 i16 220; D1 h16 h19 amber; W1 bottom+7 j8 red; W2 j19 "
         "bottom-17 black; W3 top+25 bottom+25 red"},
        {"three buttons, three lamps",
         "full; PS1 top+3 bottom-3 5; S1 e8; R1 h10 h15 330; D1 g15 g18 red; S2 e26; R2 h28 h33 330; D2 g33 g36 amber; "
         "S3 e44; R3 h46 h51 330; D3 g51 g54 green; "
         "W1 top+6 a8 red; W2 j18 bottom-14 black; W3 top+21 a26 red; W4 j36 bottom-29 black; W5 top+36 a44 red; W6 "
         "j54 bottom-44 black"},
        {"split rails of a long pier",
         "full split; PS1 top+3 bottom-3 5; R1 b45 b51 330; D1 e51 f51 red; W1 top+37 a45 red; W2 j51 bottom-42 black; "
         "W3 top+25 top+26 red; "
         "W4 bottom-25 bottom-26 black"},
        {"lamp on the second board",
         "mini; board B half 20; CE1 a2 j2 3; W1 c2 B.top+3 red; W2 i2 B.bottom-3 black; R1 B.c8 B.c14 150; D1 B.e14 "
         "B.f14 red; "
         "W3 B.top+7 B.a8 red; W4 B.j14 B.bottom-13 black"},
        {"bridge of a button past a resistor",
         "half; PS1 top+3 bottom-3 5; R1 a5 a10 1000; R2 c10 c16 330; S1 b16; D1 d18 d21 red; W1 top+5 b5 red; W2 a21 "
         "top-18 black; "
         "W3 top-25 bottom-25 black; W4 a16 f16 blue; R3 h16 h20 680; D2 g20 g23 green; W5 j23 bottom-20 black"},
    };
    return kBenches;
}

}  // namespace tiepoint::test
