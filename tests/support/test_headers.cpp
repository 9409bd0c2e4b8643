// The headers that tests share are precompiled with this file (tests/CMakeLists.txt).
