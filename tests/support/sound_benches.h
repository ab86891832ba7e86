#pragma once
// Ordinary benches with nothing wrong, on which every rule must stay silent; the demo benches of resources/benches join them in the
// tests. Our own circuits, of the kinds that any first course builds: one lamp, lamps side by side, buttons in row and side by
// side, changeover switches, dividers, dimmers, several supplies, several boards.

#include <span>
#include <string_view>

namespace tiepoint::test {

struct SoundBench {
    std::string_view name, text;
};

inline std::span<const SoundBench> soundBenches() {
    static constexpr SoundBench kBenches[] = {
        {"beacon",
         "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black"},
        {"beacon on nine volts",
         "half; KB1 top+3 bottom-3; R1 c8 c14 470; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black"},
        {"beacon on cells",
         "half; CE1 top+3 bottom-3 3; R1 c8 c14 220; D1 e14 f14 amber; W1 top+7 a8 red; W2 j14 bottom-13 black"},
        {"beacon on usb", "half; US1; R1 c8 c14 270; D1 e14 f14 green; W1 US1.5V a8 red; W2 j14 US1.GND1 black"},
        {"blue lamp",
         "half; PS1 top+3 bottom-3 5; R1 c8 c14 150; D1 e14 f14 blue; W1 top+7 a8 red; W2 j14 bottom-13 black"},
        {"resistor behind the lamp",
         "half; PS1 top+3 bottom-3 5; D1 b8 b11 red; R1 c11 c17 330; W1 top+7 a8 red; W2 a17 top-15 black; W3 top-1 "
         "bottom-1 black"},
        {"two in a row",
         "half; PS1 top+3 bottom-3 9; R1 c5 c10 330; D1 e10 f10 red; D2 h10 h13 red; W1 top+5 a5 red; W2 j13 bottom-12 "
         "black"},
        {"three in a row",
         "half; PS1 top+3 bottom-3 12; R1 c5 c10 390; D1 e10 f10 red; D2 h10 h13 amber; D3 g13 g16 red; W1 top+5 a5 "
         "red; "
         "W2 j16 bottom-14 black"},
        {"two side by side, each with its own",
         "half; PS1 top+3 bottom-3 5; R1 c5 c10 330; D1 e10 f10 red; R2 c15 c20 330; D2 e20 f20 green; W1 top+5 a5 "
         "red; "
         "W2 j10 bottom-9 black; W3 top+13 a15 red; W4 j20 bottom-17 black"},
        {"three side by side, each with its own",
         "half; PS1 top+3 bottom-3 5; R1 b5 b10 330; D1 e10 f10 red; R2 b13 b18 330; D2 e18 f18 amber; R3 b21 b26 150; "
         "D3 e26 f26 white; W1 top+5 a5 red; W2 j10 bottom-9 black; W3 top+11 a13 red; W4 j18 bottom-15 black; W5 "
         "top+18 a21 red; "
         "W6 j26 bottom-22 black"},
        {"voltage divider",
         "half; PS1 top+3 bottom-3 9; R1 c6 c12 1000; R2 d12 d18 2200; W1 top+6 a6 red; W2 a18 top-16 black; "
         "W3 top-20 bottom-20 black"},
        {"divider with a lamp beside it",
         "half; PS1 top+3 bottom-3 9; R1 c4 c9 1000; R2 d9 d14 1000; R3 c18 c23 470; D1 e23 f23 red; W1 top+4 a4 red; "
         "W2 a14 top-12 black; W3 top+15 a18 red; W4 j23 bottom-20 black; W5 top-25 bottom-25 black"},
        {"resistors side by side",
         "half; PS1 top+3 bottom-3 5; R1 b8 b14 680; R2 c8 c14 680; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 "
         "black"},
        {"resistors in a row",
         "half; PS1 top+3 bottom-3 5; R1 c4 c9 150; R2 d9 d14 180; D1 e14 f14 red; W1 top+4 a4 red; W2 j14 bottom-13 "
         "black"},
        {"ladder of three",
         "half; PS1 top+3 bottom-3 5; R1 b4 b9 1000; R2 c9 c14 1000; R3 d14 d19 1000; R4 g9 g4 2200; W1 top+4 a4 red; "
         "W2 e9 f9 blue; "
         "W3 j4 bottom-4 black; W4 e19 f19 green; W5 j19 bottom-17 black"},
        {"button",
         "half; PS1 top+3 bottom-3 5; R1 c5 c10 330; S1 e10; D1 g12 g16 red; W1 top+5 a5 red; W2 j16 bottom-14 black"},
        {"button on one side",
         "half; PS1 top+3 bottom-3 5; R1 c3 c8 330; S1 b8; D1 c10 c13 red; W1 top+4 a3 red; W2 a13 top-12 black; W3 "
         "top-1 bottom-1 black"},
        {"button before the resistor",
         "half; PS1 top+3 bottom-3 5; S1 e6; R1 h8 h14 330; D1 i14 i17 green; W1 top+6 a6 red; W2 j17 bottom-15 black"},
        {"two buttons in a row",
         "half; PS1 top+3 bottom-3 5; R1 c3 c8 330; S1 e8; S2 e14; D1 g16 g20 red; W1 top+4 a3 red; W2 c10 c14 yellow; "
         "W3 j20 bottom-17 black"},
        {"two buttons side by side",
         "half; PS1 top+3 bottom-3 5; R1 c3 c8 330; S1 e8; S2 e14; D1 g16 g20 red; W1 top+4 a3 red; W2 a8 a14 yellow; "
         "W3 h10 h16 blue; "
         "W4 j20 bottom-17 black"},
        {"two buttons, two lamps",
         "half; PS1 top+3 bottom-3 5; S1 e6; R1 h8 h12 330; D1 g12 g14 red; S2 e18; R2 h20 h24 330; D2 g24 g26 green; "
         "W1 top+6 a6 red; "
         "W2 j14 bottom-12 black; W3 top+15 a18 red; W4 j26 bottom-22 black"},
        {"three buttons in a row",
         "half; PS1 top+3 bottom-3 5; R1 c2 c7 270; S1 e7; S2 e13; S3 e19; D1 g21 g25 red; W1 top+2 a2 red; W2 c9 c13 "
         "yellow; "
         "W3 c15 c19 yellow; W4 j25 bottom-21 black"},
        {"button that puts the lamp out",
         "half; PS1 top+3 bottom-3 5; R1 c4 c9 330; D1 d9 d11 red; S1 e9; W1 top+4 a4 red; W2 a11 top-10 black; W3 "
         "top-1 bottom-1 black"},
        {"slide switch",
         "half; PS1 top+3 bottom-3 5; SW1 e6 b; R1 c8 c14 330; D1 e14 f14 red; W1 top+6 a7 red; W2 j14 bottom-13 "
         "black"},
        {"changeover between two lamps",
         "half; PS1 top+3 bottom-3 5; R1 a3 a8 330; SW1 e7 a; D1 c7 c4 red; D2 c9 c12 green; W1 top+4 b3 red; W2 b4 "
         "top-5 black; "
         "W3 a12 top-11 black; W4 top-1 bottom-1 black"},
        {"stair lamp",
         "half; PS1 top+3 bottom-3 5; SW1 e7 a; SW2 e15 a; R1 a16 a22 330; D1 e22 f22 amber; W1 top+7 a8 red; W2 d9 "
         "d15 yellow; "
         "W3 c7 c17 green; W4 j22 bottom-19 black"},
        {"diode that guards",
         "half; PS1 top+3 bottom-3 5; V1 c5 c9; R1 d9 d14 270; D1 e14 f14 red; W1 top+5 a5 red; W2 j14 bottom-13 "
         "black"},
        {"red and green head to tail",
         "half; PS1 top+3 bottom-3 5; SW1 e5 a; R1 c6 c11 330; D1 d11 d14 red; D2 a14 a11 green; SW2 g14 a; W1 top+4 "
         "a5 red; "
         "W2 a7 top-6 black; W3 top-25 bottom-25 black; W4 c14 i15 blue; W5 j14 bottom-13 black; W6 top+20 j16 red"},
        {"dimmer",
         "half; PS1 top+3 bottom-3 5; RV1 e7 5000 0.3; R1 b9 b15 330; D1 e15 f15 red; W1 top+7 a7 red; W2 j15 "
         "bottom-13 black"},
        {"dimmer as a divider",
         "half; PS1 top+3 bottom-3 5; RV1 e7 1000 0.4; R1 b9 b15 330; D1 e15 f15 red; W1 a7 top-6 black; W2 top+11 a11 "
         "red; "
         "W3 j15 bottom-13 black; W4 top-1 bottom-1 black"},
        {"two supplies",
         "half; PS1 top+3 top-3 5; PS2 bottom+3 bottom-3 9; R1 c8 c14 330; D1 d14 d17 red; R2 h8 h14 470; "
         "D2 g14 g17 green; W1 top+7 a8 red; W2 a17 top-15 black; W3 bottom+7 j8 red; W4 j17 bottom-15 black"},
        {"two supplies with one minus",
         "half; PS1 top+3 top-3 5; PS2 bottom+3 bottom-3 9; R1 c8 c14 330; D1 d14 d17 red; R2 h8 h14 470; D2 g14 g17 "
         "green; "
         "W1 top+7 a8 red; W2 a17 top-15 black; W3 bottom+7 j8 red; W4 j17 bottom-15 black; W5 top-1 bottom-1 black"},
        {"split rails, bridged",
         "half split; PS1 top+3 bottom-3 5; R1 c18 c24 330; D1 e24 f24 red; W1 top+20 a18 red; W2 j24 bottom-20 black; "
         "W3 top+12 top+13 red; W4 bottom-12 bottom-13 black"},
        {"split rails, one half used",
         "half split; PS1 top+3 bottom-3 5; R1 c4 c9 330; D1 e9 f9 red; W1 top+5 a4 red; W2 j9 bottom-8 black"},
        {"both pairs of rails tied",
         "half; PS1 top+3 top-3 5; R1 h8 h14 330; D1 g14 g17 red; W1 top+1 bottom+1 red; W2 top-2 bottom-2 black; W3 "
         "bottom+7 j8 red; "
         "W4 j17 bottom-15 black"},
        {"mini board", "mini; CE1 a1 j1 3; R1 c1 c6 150; D1 e6 f6 red; W1 g6 g1 black"},
        {"mini board with a button", "mini; CE1 a1 j1 4; R1 c1 c6 330; S1 e6; D1 g8 g11 green; W1 j11 i1 black"},
        {"two boards",
         "half; board B half 34; PS1 top+3 bottom-3 5; R1 B.c8 B.c14 330; D1 B.e14 B.f14 red; W1 top+25 B.top+1 red; "
         "W2 bottom-25 B.bottom-1 black; W3 B.top+7 B.a8 red; W4 B.j14 B.bottom-13 black"},
        {"full board",
         "full; PS1 top+3 bottom-3 5; R1 c30 c36 330; S1 e36; D1 h38 h42 green; W1 top+24 a30 red; W2 j42 bottom-33 "
         "black; R2 c50 c56 330; "
         "D2 e56 f56 red; W3 top+40 a50 red; W4 j56 bottom-45 black"},
        {"button in one half of the gap",
         "half; PS1 top+3 bottom-3 5; R1 i5 i10 330; S1 g10; D1 h12 h15 amber; W1 top+5 e5 red; W2 c5 f5 orange; W3 "
         "j15 bottom-14 black"},
        {"two buttons on one side",
         "half; PS1 top+3 bottom-3 5; R1 a4 a8 330; S1 b8; S2 b13; D1 c15 c18 red; W1 top+4 b4 red; W2 a10 a13 yellow; "
         "W3 a18 top-16 black; "
         "W4 top-1 bottom-1 black"},
        {"lamp and button on a full board",
         "full; PS1 top+3 bottom-3 5; R1 a20 a25 470; S1 b25; D1 c27 c30 green; W1 top+15 b20 red; W2 a30 top-24 "
         "black; W3 top-50 bottom-50 black"},
        {"twelve volts, two chains",
         "half; PS1 top+3 bottom-3 12; R1 c3 c8 560; D1 e8 f8 red; D2 h8 h11 red; R2 c15 c20 680; D3 e20 f20 amber; D4 "
         "h20 h23 green; "
         "W1 top+4 a3 red; W2 j11 bottom-9 black; W3 top+13 a15 red; W4 j23 bottom-19 black"},
        {"infrared",
         "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 infrared; W1 top+7 a8 red; W2 j14 bottom-13 black"},
        {"lamp straight from a limited supply", "half; PS1 a5 a8 5 0.01; D1 c5 c8 red"},
        {"a supply in reserve",
         "half; PS1 top+3 bottom-3 5; CE1 - - 2; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 "
         "black"},
        {"bridge of five resistors",
         "half; PS1 top+3 bottom-3 5; R1 a5 a10 1000; R2 b5 b16 2200; R3 c10 c16 470; R4 f10 f22 2200; R5 h16 h22 "
         "1000; W1 top+4 c5 red; "
         "W2 e10 g10 blue; W3 e16 g16 green; W4 j22 bottom-19 black"},
        {"lamp and a resistor at once",
         "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; R2 c20 c26 1000; W1 top+7 a8 red; W2 j14 "
         "bottom-13 black; "
         "W3 top+17 a20 red; W4 e26 f26 green; W5 j26 bottom-22 black"},
    };
    return kBenches;
}

}  // namespace tiepoint::test
